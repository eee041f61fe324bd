using System.Collections.Immutable;

namespace Triage.Notes.Kinds;

/// <summary>A procedure that reveals a finding or a round of them, measures one part, or decides one fault.</summary>
public sealed record Test(string Id, string Name) : Note(Id, Name)
{
    public override NoteKind Kind => NoteKind.Test;

    public TestWay Way { get; init; }

    /// <summary>Finding that it reveals; null when it does something else.</summary>
    public string? Reveals { get; init; }

    /// <summary>Findings that one look tells at one price, in the order in which one looks; two or more, or none.</summary>
    public ImmutableArray<string> Round { get; init; } = [];

    /// <summary>Fault that it decides, with outcomes of its own.</summary>
    public string? Decides { get; init; }

    /// <summary>Role whose part it measures; null when it measures none.</summary>
    public string? MeasuresRole { get; init; }

    /// <summary>Part class that it measures.</summary>
    public string? MeasuresPart { get; init; }

    /// <summary>Whether it tells of this fault: by its name, or by the part or place that it measures.</summary>
    public bool DecidesOrMeasures(Fault fault) => Decides == fault.Id
        || ((MeasuresRole ?? MeasuresPart) is not null && (MeasuresRole is null || MeasuresRole == fault.Role) && (MeasuresPart is null || MeasuresPart == fault.Part));

    /// <summary>What can come of a measurement or of a check on one fault, with its chances.</summary>
    public ImmutableArray<TestOutcome> Outcomes { get; init; } = [];

    public Effort Effort { get; init; } = new();

    /// <summary>The part stays where it is.</summary>
    public bool InPlace { get; init; } = true;

    public ImmutableArray<string> Steps { get; init; } = [];

    /// <summary>Classes for which it is offered; none named means every class that knows what it reveals.</summary>
    public ImmutableArray<string> Classes { get; init; } = [];

    public BuildCondition? Build { get; init; }

    /// <summary>Every finding that it reveals: one, a round, or none.</summary>
    public ImmutableArray<string> Revealed => Reveals is { } one ? [one] : Round;
}

public enum TestWay
{
    Ask,
    Look,
    Listen,
    Measure,
    Provoke,
}

/// <param name="Given">P(outcome | mode), by failure mode id; "good" for a good part; "otherwise" for modes not named. Where it decides a fault:
/// "present", "absent", and other modes of the same part.</param>
public sealed record TestOutcome(string Id, string Name, ImmutableDictionary<string, Chance> Given)
{
    /// <summary>Whether a name in <see cref="Given"/> stands for no failure mode of its own.</summary>
    public static bool IsGeneral(string name) => name is "good" or "otherwise" or "present" or "absent";
}
