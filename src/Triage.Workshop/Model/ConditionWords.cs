using Triage.Reasoning.Networks;

namespace Triage.Workshop.Model;

/// <summary>Conditions as notes write them.</summary>
internal static class ConditionWords
{
    private static readonly (string Word, Conditions Condition)[] Known =
    [
        ("cold", Conditions.Cold), ("warm", Conditions.Warm), ("flexed", Conditions.Flexed),
        ("tapped", Conditions.Tapped), ("on-load", Conditions.OnLoad), ("after-power-loss", Conditions.AfterPowerLoss),
    ];

    /// <summary>The conditions named; words that are none are the note reader's business.</summary>
    public static Conditions Read(IEnumerable<string> words) =>
        words.Aggregate(Conditions.None, (all, word) => all | Known.FirstOrDefault(k => k.Word == word).Condition);
}
