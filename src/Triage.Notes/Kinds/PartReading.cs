using System.Collections.Immutable;
using Triage.Measurements.Instruments;
using Triage.Measurements.Readings;

namespace Triage.Notes.Kinds;

/// <summary>What an instrument in one mode shows of a part class.</summary>
/// <param name="Mode">What the instrument is set to.</param>
/// <param name="Good">Where a good part reads.</param>
/// <param name="Modes">Where it reads in a failure mode, by mode id; a mode that is not named reads as a good part does.</param>
public sealed record PartReading(ReadingMode Mode, StateReading Good, ImmutableDictionary<string, StateReading> Modes)
{
    /// <summary>Terminals it is meant between or at: "b-e", "out"; none named: across the part.</summary>
    public ImmutableArray<string> At { get; init; } = [];

    /// <summary>True: only where it sits; false: only with a leg lifted or out; null: either.</summary>
    public bool? InPlace { get; init; }

    /// <summary>It tells something only while the power is on.</summary>
    public bool PowerOn { get; init; }

    /// <summary>Published source, "common practice, no source" or "from memory"; null when the note does not say.</summary>
    public string? Source { get; init; }
}
