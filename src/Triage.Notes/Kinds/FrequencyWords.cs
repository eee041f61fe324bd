using System.Collections.Frozen;

namespace Triage.Notes.Kinds;

/// <summary>
/// Words for chances and what they stand for. After Mosteller &amp; Youtz, "Quantifying probabilistic expressions",
/// Statistical Science 5 (1990); values from memory.
/// </summary>
public static class FrequencyWords
{
    /// <summary>Pseudo-jobs behind a word.</summary>
    public const double WordWeight = 3;

    /// <summary>Pseudo-jobs behind a bare number.</summary>
    public const double NumberWeight = 6;

    /// <summary>Probability of each word, 0 … 1.</summary>
    public static FrozenDictionary<string, double> Table { get; } = new Dictionary<string, double>
    {
        ["always"] = 0.995,
        ["almost always"] = 0.95,
        ["usually"] = 0.8,
        ["often"] = 0.65,
        ["sometimes"] = 0.3,
        ["seldom"] = 0.12,
        ["rarely"] = 0.05,
        ["never"] = 0.002,
    }.ToFrozenDictionary();

    /// <summary>The chance a word stands for; null when it is not one of them.</summary>
    public static Chance? Find(string word) =>
        Table.TryGetValue(word, out var p) ? new Chance(p, WordWeight, word) : null;
}
