using System.Collections.Immutable;

namespace Triage.Notes.Kinds;

/// <summary>Keys or steps that put a machine back into a known state.</summary>
public sealed record Reset(string Id, string Name) : Note(Id, Name)
{
    public override NoteKind Kind => NoteKind.Reset;

    /// <summary>Only for this class; null when a device is named.</summary>
    public string? Class { get; init; }

    /// <summary>Only for this device: exact keys.</summary>
    public string? Device { get; init; }

    /// <summary>Id of the general reset that this one is the exact form of; its chances and learning are shared.</summary>
    public string? FormOf { get; init; }

    public ImmutableArray<string> Steps { get; init; } = [];

    /// <summary>What must hold before.</summary>
    public ImmutableArray<string> Before { get; init; } = [];

    public ImmutableArray<Clears> Clears { get; init; } = [];

    /// <summary>What it erases; null when nothing. Blocked until the owner agreed or it was saved.</summary>
    public string? Erases { get; init; }

    public Effort Effort { get; init; } = new();

    public BuildCondition? Build { get; init; }
}

/// <param name="Fault">Fault id.</param>
/// <param name="Works">Chance that the machine works right after.</param>
/// <param name="Holds">Chance that it still works after power is lost, given that it worked.</param>
public sealed record Clears(string Fault, Chance Works, Chance Holds);
