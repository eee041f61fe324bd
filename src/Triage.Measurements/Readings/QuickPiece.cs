using Triage.Measurements.Parts;
using Triage.Measurements.Quantities;

namespace Triage.Measurements.Readings;

/// <summary>Something understood in a quick line.</summary>
/// <param name="Kind">What sort of thing.</param>
/// <param name="Span">The words it came from.</param>
/// <param name="Says">The same in one settled wording: "C14", "pin 8", "shorted", "works".</param>
public sealed record QuickPiece(QuickKind Kind, TextSpan Span, string Says)
{
    /// <summary>For a reading; for "after 30 s" the time.</summary>
    public MeasuredValue? Value { get; init; }

    /// <summary>For a rating.</summary>
    public PartRating? Rating { get; init; }
}

/// <summary>The sorts of thing a quick line says.</summary>
public enum QuickKind
{
    /// <summary>"C14", "IC3", "Q7".</summary>
    Designator,

    /// <summary>A kind of part without a designator: belt, fuse, socket.</summary>
    Part,

    /// <summary>Where on it: "pin 8", "b-e", "12 V rail".</summary>
    Terminal,

    /// <summary>How it was found: shorted, open, dried out, ok.</summary>
    Verdict,
    Rating,
    Reading,

    /// <summary>Circumstances: under load, no load, warm, cold.</summary>
    Condition,

    /// <summary>What was done: swapped, fitted new, cleaned, resoldered.</summary>
    Action,

    /// <summary>How the machine did afterwards: works, no difference, failed again.</summary>
    Outcome,
}
