using System.Collections.Immutable;

namespace Triage.Notes.Kinds;

/// <summary>A procedure that reveals a finding, or that measures one part.</summary>
public sealed record Test(string Id, string Name) : Note(Id, Name)
{
    public override NoteKind Kind => NoteKind.Test;

    public TestWay Way { get; init; }

    /// <summary>Finding that it reveals; null when it measures a part.</summary>
    public string? Reveals { get; init; }

    /// <summary>Role whose part it measures; null when it reveals a finding.</summary>
    public string? MeasuresRole { get; init; }

    /// <summary>Part class that it measures.</summary>
    public string? MeasuresPart { get; init; }

    /// <summary>What can come of a measurement, with its chance under each failure mode and for a good part.</summary>
    public ImmutableArray<TestOutcome> Outcomes { get; init; } = [];

    public Effort Effort { get; init; } = new();

    /// <summary>The part stays where it is.</summary>
    public bool InPlace { get; init; } = true;

    public ImmutableArray<string> Steps { get; init; } = [];

    /// <summary>Classes for which it is offered; none named means every class that knows what it reveals.</summary>
    public ImmutableArray<string> Classes { get; init; } = [];
}

public enum TestWay
{
    Ask,
    Look,
    Listen,
    Measure,
    Provoke,
}

/// <param name="Given">P(outcome | mode), by failure mode id; "good" for a good part; "otherwise" for modes not named.</param>
public sealed record TestOutcome(string Id, string Name, ImmutableDictionary<string, Chance> Given);
