using System.Collections.Immutable;

namespace Triage.Notes.Kinds;

/// <summary>A kind of machine: the roles that every such machine has, its hazards, the usual order of checks.</summary>
public sealed record DeviceClass(string Id, string Name) : Note(Id, Name)
{
    public override NoteKind Kind => NoteKind.DeviceClass;

    /// <summary>
    /// A published network entered as notes: shares are priors as they stand, nothing is added to them, and it is not taken for
    /// granted that something is wrong.
    /// </summary>
    public bool Exact { get; init; }

    /// <summary>What differs between machines of this class.</summary>
    public ImmutableArray<Trait> Builds { get; init; } = [];

    public ImmutableArray<Role> Roles { get; init; } = [];

    public ImmutableArray<Caution> Cautions { get; init; } = [];

    /// <summary>What must be stopped at once whatever the fault (leaking cells out, neutralise).</summary>
    public ImmutableArray<StopNow> StopAtOnce { get; init; } = [];

    /// <summary>Ids of findings worth asking the owner when the machine is handed over.</summary>
    public ImmutableArray<string> Counter { get; init; } = [];

    /// <summary>What is left alone once something is seen.</summary>
    public ImmutableArray<Pointless> Pointless { get; init; } = [];

    /// <summary>What comes before diagnosis where something can be lost or get worse.</summary>
    public ImmutableArray<Protect> Protect { get; init; } = [];

    /// <summary>Ids of tests and resets in the usual order.</summary>
    public ImmutableArray<string> UsualOrder { get; init; } = [];

    /// <summary>Ids of tests that come before any power is put on the unit.</summary>
    public ImmutableArray<string> BeforePower { get; init; } = [];

    /// <summary>Ids of tests at limited power that come before full power where it is called for; the first that fits the build.</summary>
    public ImmutableArray<string> LimitedPower { get; init; } = [];

    public ImmutableArray<AccessStep> Access { get; init; } = [];

    /// <summary>What else to look at while it is open.</summary>
    public ImmutableArray<string> WhileOpen { get; init; } = [];

    /// <summary>How any mend of this class is proven.</summary>
    public ImmutableArray<ProofStep> Proof { get; init; } = [];

    /// <summary>What a working one is usually worth to its owner, in money; null: as the bench says.</summary>
    public double? UsualWorth { get; init; }

    /// <summary>Null where nobody exchanges the whole.</summary>
    public Exchange? Exchange { get; init; }

    /// <summary>What the notes of this class leave out, in words.</summary>
    public ImmutableArray<string> NotCovered { get; init; } = [];
}

/// <summary>Something every machine of a class has.</summary>
/// <param name="Id">Shared between classes where the job is the same (backup-supply, power-entry).</param>
/// <param name="Name">In words.</param>
/// <param name="Part">Usual part class; null when it varies.</param>
/// <param name="Access">Access step behind which it sits.</param>
public sealed record Role(string Id, string Name, string? Part, string? Access)
{
    /// <summary>Null: every build has it.</summary>
    public BuildCondition? Build { get; init; }
}
