using System.Collections.Immutable;

namespace Triage.Search.Words;

/// <summary>A finding that the text speaks of.</summary>
/// <param name="Finding">Finding id.</param>
/// <param name="Value">Value id.</param>
/// <param name="Words">The words it came from.</param>
/// <param name="Confidence">0 … 1; lower for gaps, corrected spelling and turned-round phrasings. An order, not a probability.</param>
public sealed record RecognisedFinding(string Finding, string Value, string Words, TextSpan Span, double Confidence)
{
    /// <summary>Chance that the words mean it, 0 to 1: fitted to complaints that others labelled; hedges lower it.</summary>
    public double Sure { get; init; } = 1;

    /// <summary>cold, warm, flexed, tapped, on-load, after-power-loss.</summary>
    public ImmutableArray<string> When { get; init; } = [];

    /// <summary>"I think", "maybe".</summary>
    public bool Hedged { get; init; }

    /// <summary>"sometimes", "now and then".</summary>
    public bool Intermittent { get; init; }

    /// <summary>Normal because the words deny something ("no hum", "does not hum").</summary>
    public bool Negated { get; init; }

    /// <summary>A phrasing of the note is all that the clause says.</summary>
    public bool WholeClause { get; init; }

    /// <summary>Taken from what the sentence means; no phrasing says it in these words.</summary>
    public bool ByMeaning { get; init; }
}
