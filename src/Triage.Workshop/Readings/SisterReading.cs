using System.Text.RegularExpressions;
using Triage.Measurements.Instruments;
using Triage.Measurements.Quantities;
using Triage.Measurements.Readings;
using Triage.Notes.Kinds;

namespace Triage.Workshop.Readings;

/// <summary>A reading of the sister channel or of a working unit: not evidence, but what the part in question should read.</summary>
internal static partial class SisterReading
{
    /// <summary>Two good parts of one design read alike within this (common practice, no source).</summary>
    private const double Percent = 20;

    [GeneratedRegex(@"\b(sister|other channel|good channel)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Sister { get; }

    [GeneratedRegex(@"\b(working unit|known good|good unit)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Working { get; }

    /// <summary>Null for a reading of the machine itself.</summary>
    public static ExpectedBy? Of(Read entry) =>
        entry.Text + " " + entry.Note is var words && Sister.IsMatch(words) ? ExpectedBy.SisterChannel
        : Working.IsMatch(words) ? ExpectedBy.WorkingUnit
        : null;

    public static ExpectedRange? Expects(Reading reading, ExpectedBy by) =>
        reading.Value is { Kind: MeasuredKind.Value, Quantity: { } shown } ? ExpectedRange.Within(shown, Percent, Percent, by) : null;
}
