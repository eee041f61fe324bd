using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Workshop;
using Triage.Workshop.Readings;

namespace Triage.Service.Wire;

/// <summary>A reading of a job and what it says of its part.</summary>
/// <param name="Entry">Index in the job's log.</param>
/// <param name="Says">In words; absent when nobody knows the machine, or it is not weighed.</param>
internal sealed record WireReading(int Entry, string Text, string? Says)
{
    /// <summary>Designator or role; absent when no part was found.</summary>
    public string? Part { get; init; }

    /// <summary>Why it is not weighed and what to do; absent when it is.</summary>
    public string? NotWeighed { get; init; }

    /// <summary>Good first, then the failure modes.</summary>
    public required ImmutableArray<WireReadingState> States { get; init; }

    public static ImmutableArray<WireReading> Of(Job job, Bench bench) =>
        [.. job.Log.Select((entry, at) => (Read: entry as Read, At: at)).Where(e => e.Read is not null).Select(e => Of(e.At, e.Read!, bench.VerdictOn(job, e.Read!)))];

    private static WireReading Of(int at, Read entry, ReadingVerdict? verdict) => new(at, entry.Text, verdict is { NotUsed: null } ? verdict.Words : null)
    {
        Part = verdict?.Part,
        NotWeighed = verdict is null ? "nobody knows this machine, so nothing says what to expect" : verdict.NotUsed,
        States = [.. (verdict?.States ?? []).Select(s => new WireReadingState(s.State, s.Name, s.Likelihood) { Low = Bound(s.Low), High = Bound(s.High) })],
    };

    /// <summary>A range without an end on one side has none in JSON.</summary>
    private static double? Bound(double? end) => end is { } at && double.IsFinite(at) ? at : null;
}

/// <param name="State">good, or the id of a failure mode.</param>
/// <param name="Likelihood">Of the reading in that state, over the largest of them: only ratios mean anything.</param>
internal sealed record WireReadingState(string State, string Name, double Likelihood)
{
    /// <summary>Where a part in that state reads, in the unit of the mode; absent where the range has no end.</summary>
    public double? Low { get; init; }

    public double? High { get; init; }
}
