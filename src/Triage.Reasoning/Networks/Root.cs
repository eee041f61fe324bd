using System.Collections.Immutable;

namespace Triage.Reasoning.Networks;

/// <summary>
/// One part, or one compound of faults tied together by damage that follows; a non-part fault is a root with one mode.
/// Exactly one state holds. State 0 is always <c>good</c>.
/// </summary>
/// <param name="Id">Unique among the roots of a network.</param>
/// <param name="States">State 0 is good; every other names the fault or faults that it stands for.</param>
/// <param name="Prior">P(state), one per state, summing to 1.</param>
public sealed record Root(string Id, ImmutableArray<RootState> States, ImmutableArray<double> Prior)
{
    /// <summary>
    /// How many jobs' worth of knowledge stands behind each prior (effective sample size, one per state);
    /// infinite means exactly known. Intervals are made from it.
    /// </summary>
    public ImmutableArray<double> PriorWeight { get; init; } = [];
}

/// <summary>A state of a root.</summary>
/// <param name="Id">"good" for state 0; the failure mode otherwise; unique within the root.</param>
/// <param name="Faults">Ids of the faults present in this state: none for good, one for a plain mode, several in a compound root.</param>
public sealed record RootState(string Id, ImmutableArray<string> Faults);
