using System.Collections.Immutable;

namespace Triage.Notes.Kinds;

/// <summary>A make and model family.</summary>
public sealed record Device(string Id, string Name) : Note(Id, Name)
{
    public override NoteKind Kind => NoteKind.Device;

    public string? Maker { get; init; }

    public string? Model { get; init; }

    /// <summary>Device class id.</summary>
    public required string Class { get; init; }

    public string? Years { get; init; }

    public ImmutableArray<string> Boards { get; init; } = [];

    public ImmutableArray<DevicePart> Parts { get; init; } = [];

    /// <summary>Steps of this device; a step with the id of one of its class replaces that.</summary>
    public ImmutableArray<AccessStep> Access { get; init; } = [];

    public ImmutableArray<Drawing> Drawings { get; init; } = [];

    /// <summary>Roles of the class that this device does not have.</summary>
    public ImmutableArray<string> Without { get; init; } = [];

    /// <summary>Traits that every such machine has.</summary>
    public Build Build { get; init; } = Build.Untold;
}

/// <param name="Designator">C14, IC3; null for parts that carry none.</param>
/// <param name="Part">Part class id.</param>
/// <param name="Role">Role it plays; null when none that matters.</param>
/// <param name="Where">In words.</param>
/// <param name="Rating">As marked.</param>
public sealed record DevicePart(string? Designator, string Part, string? Role, string? Where, string? Rating);

/// <param name="File">Path relative to the book.</param>
/// <param name="Board">Board revision.</param>
/// <param name="Shows">What it shows; designators on it.</param>
public sealed record Drawing(string File, string? Board, string? Shows);
