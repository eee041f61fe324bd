using System.Collections.Immutable;

namespace Triage.Reasoning.Learning;

/// <summary>What the notes say before any job is counted: the prior knowledge of the learner.</summary>
public sealed record Knowledge
{
    /// <summary>Faults, in a fixed order.</summary>
    public required ImmutableArray<KnownFault> Faults { get; init; }

    public required ImmutableArray<KnownFinding> Findings { get; init; }

    /// <summary>Resets and fixes with the faults they clear.</summary>
    public ImmutableArray<KnownAction> Actions { get; init; } = [];

    /// <summary>Sorts of machine by what can fail in them; a job names its own.</summary>
    public ImmutableArray<KnownScope> Scopes { get; init; } = [];
}

/// <param name="Id">Fault id.</param>
/// <param name="Group">Failure mode of a part class, "part/mode", shared by faults in different roles; null for a non-part fault.</param>
/// <param name="Share">Unnormalised share among causes where it applies, as the note says it.</param>
/// <param name="ShareWeight">Pseudo-jobs behind the share.</param>
public sealed record KnownFault(string Id, string? Group, double Share, double ShareWeight)
{
    public ImmutableArray<KnownLink> Shows { get; init; } = [];

    /// <summary>Faults that follow from it as damage.</summary>
    public ImmutableArray<string> LeadsTo { get; init; } = [];

    /// <summary>
    /// Its share among the listed causes is a proportion of its own, not one rate among others: what any machine can come in with, such as nothing
    /// wrong.
    /// </summary>
    public bool Apart { get; init; }
}

/// <param name="Finding">Finding id.</param>
/// <param name="Produces">P(value | only this cause), one per value of the finding, summing to 1.</param>
/// <param name="Weight">Pseudo-jobs behind it.</param>
public sealed record KnownLink(string Finding, ImmutableArray<double> Produces, double Weight);

/// <param name="Id">Finding id.</param>
/// <param name="Values">Value names, normal first for ordered findings.</param>
/// <param name="Nominal">No order among the values.</param>
/// <param name="Ambient">P(value without any linked cause), summing to 1.</param>
/// <param name="AmbientWeight">Pseudo-jobs behind it.</param>
public sealed record KnownFinding(string Id, ImmutableArray<string> Values, bool Nominal, ImmutableArray<double> Ambient, double AmbientWeight);

/// <param name="Id">Reset or fix id.</param>
/// <param name="Clears">What it does to each fault it names.</param>
public sealed record KnownAction(string Id, ImmutableArray<KnownClearing> Clears);

/// <param name="Fault">Fault id.</param>
/// <param name="Works">Chance that the fault is silent right after, with its weight in pseudo-jobs.</param>
/// <param name="Holds">Chance that it stays silent given that it went silent.</param>
public sealed record KnownClearing(string Fault, Estimate Works, Estimate Holds);
