using System.Collections.Immutable;

namespace Triage.Notes.Kinds;

/// <summary>What something that one does costs and needs; shared by tests, resets and mends.</summary>
public sealed record Effort
{
    /// <summary>Minutes with hands on, without opening anything.</summary>
    public double Minutes { get; init; }

    /// <summary>Money, in the bench's currency.</summary>
    public double Money { get; init; }

    /// <summary>Minutes that pass while nobody works: soaking, charging, drying, cooling.</summary>
    public double WaitMinutes { get; init; }

    /// <summary>Days of waiting for a part.</summary>
    public double WaitDays { get; init; }

    /// <summary>Access step that must be open.</summary>
    public string? Access { get; init; }

    /// <summary>Tools it needs, by name.</summary>
    public ImmutableArray<string> Tools { get; init; } = [];

    public PowerStage Power { get; init; }

    public ImmutableArray<Caution> Cautions { get; init; } = [];

    /// <summary>Ids of tests or resets that must have been done before.</summary>
    public ImmutableArray<string> After { get; init; } = [];

    /// <summary>Chance of doing harm; null when none worth counting.</summary>
    public Chance? HarmChance { get; init; }

    /// <summary>What that harm would cost.</summary>
    public double HarmPrice { get; init; }
}

/// <summary>How much power a step puts on the unit.</summary>
public enum PowerStage
{
    /// <summary>Unplugged, cells out.</summary>
    Cold,

    /// <summary>Through a current limit or a series lamp.</summary>
    Limited,

    Full,
}

/// <summary>A step of taking a machine apart, with what it hides behind.</summary>
/// <param name="Id">Unique in its tree.</param>
/// <param name="Name">What to open.</param>
/// <param name="Minutes">To open and close it again.</param>
/// <param name="Behind">The step that must be open first; null for the outermost.</param>
public sealed record AccessStep(string Id, string Name, double Minutes, string? Behind)
{
    /// <summary>Null: every build opens this way. Where it does not fit, the step cannot be opened, nor what lies behind it reached.</summary>
    public BuildCondition? Build { get; init; }
}
