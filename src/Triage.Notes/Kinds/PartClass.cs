using System.Collections.Immutable;

namespace Triage.Notes.Kinds;

/// <summary>A class of parts and the ways in which it fails.</summary>
public sealed record PartClass(string Id, string Name) : Note(Id, Name)
{
    public override NoteKind Kind => NoteKind.PartClass;

    public ImmutableArray<FailureMode> Modes { get; init; } = [];

    /// <summary>What instruments show of a good part and in each failure mode.</summary>
    public ImmutableArray<PartReading> Readings { get; init; } = [];

    public ImmutableArray<string> Wears { get; init; } = [];

    public ImmutableArray<string> LookFor { get; init; } = [];

    public ImmutableArray<string> TestInPlace { get; init; } = [];

    public ImmutableArray<string> TestOut { get; init; } = [];

    public ImmutableArray<string> MustMatch { get; init; } = [];

    public ImmutableArray<string> MayBeBetter { get; init; } = [];

    public ImmutableArray<string> MustNotChange { get; init; } = [];

    public ImmutableArray<string> NewCanBeBad { get; init; } = [];

    public ImmutableArray<Caution> Cautions { get; init; } = [];
}

/// <param name="Id">Unique in its part class: shorted, open, leaking, worn…</param>
/// <param name="Share">Share among failures of this part class, with its source.</param>
public sealed record FailureMode(string Id, string Name, Chance? Share);
