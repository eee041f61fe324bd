using System.Collections.Immutable;

namespace Triage.Notes.Kinds;

/// <summary>A failure mode of a part class in a role, or a fault that is not a part's.</summary>
public sealed record Fault(string Id, string Name) : Note(Id, Name)
{
    public override NoteKind Kind => NoteKind.Fault;

    /// <summary>Part class id; null for a non-part fault.</summary>
    public string? Part { get; init; }

    /// <summary>Failure mode of the part class; null for a non-part fault.</summary>
    public string? Mode { get; init; }

    /// <summary>Role in which it fails; null when the role does not matter.</summary>
    public string? Role { get; init; }

    /// <summary>Only for this device class; null for every class that has the role.</summary>
    public string? Class { get; init; }

    /// <summary>Only for this device; null for every one that has the role.</summary>
    public string? Device { get; init; }

    /// <summary>Nothing is wrong with the machine: misuse, a setting, the wrong adapter.</summary>
    public bool NothingWrong { get; init; }

    /// <summary>Unnormalised share among the causes of machines that have it.</summary>
    public Chance? Share { get; init; }

    public ImmutableArray<Shows> Shows { get; init; } = [];

    /// <summary>Damage that follows.</summary>
    public ImmutableArray<LeadsTo> LeadsTo { get; init; } = [];

    public ImmutableArray<Mend> Mends { get; init; } = [];

    public ImmutableArray<Caution> Cautions { get; init; } = [];

    public BuildCondition? Build { get; init; }

    /// <summary>Explicit conditional table for published networks: replaces share and leads-to.</summary>
    public ImmutableArray<GivenRow> Given { get; init; } = [];
}

/// <summary>One effect of a fault.</summary>
/// <param name="Finding">Finding id.</param>
/// <param name="Value">Value that it produces; null for the worst (or "yes").</param>
/// <param name="Chance">P(this value | only this cause).</param>
public sealed record Shows(string Finding, string? Value, Chance Chance)
{
    /// <summary>Conditions under which it shows: cold, warm, flexed, tapped, on-load, after-power-loss. None named: always.</summary>
    public ImmutableArray<string> When { get; init; } = [];

    /// <summary>Mean minutes between appearances of something that comes and goes.</summary>
    public double? EveryMinutes { get; init; }
}

/// <param name="Fault">Fault id that follows.</param>
public sealed record LeadsTo(string Fault, Chance Chance);

/// <summary>P(this fault | exactly these other faults present), for networks entered exactly.</summary>
public sealed record GivenRow(ImmutableArray<string> Present, double Probability);

/// <summary>
/// A fix. One defined with a name belongs to the fault note that names it; another note covers the same fix by its id alone.
/// </summary>
/// <param name="Id">Fix id.</param>
/// <param name="Name">What to do; null where the fix is defined in another fault note.</param>
/// <param name="Works">Chance that it removes this fault.</param>
public sealed record Mend(string Id, string? Name, Chance Works)
{
    public Effort Effort { get; init; } = new();

    /// <summary>An exchange with a part known to be good, before anything is bought.</summary>
    public bool Swap { get; init; }

    /// <summary>Part class of the replacement, when a part is needed.</summary>
    public string? Needs { get; init; }

    public ImmutableArray<string> Steps { get; init; } = [];

    /// <summary>How this mend is proven; comes before the class's own.</summary>
    public ImmutableArray<ProofStep> Proof { get; init; } = [];

    /// <summary>Removes or renews parts that may be good, and so waits for a measurement.</summary>
    public bool TakesOut { get; init; }

    public BuildCondition? Build { get; init; }
}
