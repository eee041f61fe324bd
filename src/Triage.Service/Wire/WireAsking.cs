using System.Collections.Immutable;
using Triage.Workshop.Steps;

namespace Triage.Service.Wire;

/// <summary>A complaint, what was understood of it, and the answer.</summary>
internal sealed record WireAsking
{
    public required ImmutableArray<WireRecognised> Findings { get; init; }

    /// <summary>Words that say something, but nothing that is listed.</summary>
    public required ImmutableArray<string> NotUnderstood { get; init; }

    public required ImmutableArray<string> Remarks { get; init; }

    public required WireAnswer Answer { get; init; }

    public static WireAsking Of(Asking asking) => new()
    {
        Findings = [.. asking.Recognition.Findings.Select(f => new WireRecognised(f.Finding, f.Value, f.Words, f.When, f.ByMeaning, Math.Round(f.Sure, 2), f.Intermittent))],
        NotUnderstood = [.. asking.Recognition.NotUnderstood.Select(p => p.Words)],
        Remarks = asking.Remarks,
        Answer = WireAnswer.Of(asking.Answer!),
    };
}

/// <param name="Sure">Chance that the words mean it.</param>
/// <param name="ByMeaning">Taken from what the sentence means; no phrasing says it in these words.</param>
/// <param name="When">cold, warm, flexed, tapped, on-load, after-power-loss.</param>
internal sealed record WireRecognised(string Finding, string Value, string Words, ImmutableArray<string> When, bool ByMeaning, double Sure, bool ComesAndGoes);
