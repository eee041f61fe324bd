using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Search.Indexing;

/// <summary>What is searched of a note: its words by field, and the values it is filtered by.</summary>
/// <param name="Id">Note id; for a note that could not be read, its path.</param>
/// <param name="Kind">As notes write it (device-class, job…), or "unreadable".</param>
/// <param name="Title">What is shown for it.</param>
public sealed record IndexedNote(string Id, string Kind, string Title)
{
    public const string UnreadableKind = "unreadable";

    /// <summary>Names: its own, other names, the machine's.</summary>
    public ImmutableArray<string> Names { get; init; } = [];

    /// <summary>Names that, typed alone, mean this very note.</summary>
    public ImmutableArray<string> WholeNames { get; init; } = [];

    /// <summary>Findings and the ways people put them.</summary>
    public ImmutableArray<string> Says { get; init; } = [];

    public ImmutableArray<string> Complaint { get; init; } = [];

    /// <summary>Causes, fixes, failure modes.</summary>
    public ImmutableArray<string> Causes { get; init; } = [];

    /// <summary>Log entries, steps, parts and where they are.</summary>
    public ImmutableArray<string> Log { get; init; } = [];

    /// <summary>Plain text of the Markdown.</summary>
    public string Body { get; init; } = "";

    /// <summary>Ids of devices and device classes.</summary>
    public ImmutableArray<string> DeviceIds { get; init; } = [];

    /// <summary>Finding ids and finding=value.</summary>
    public ImmutableArray<string> FindingIds { get; init; } = [];

    /// <summary>Fault ids.</summary>
    public ImmutableArray<string> CauseIds { get; init; } = [];

    /// <summary>As notes write it (mended, worked-around…), "open" for an open job; null for other kinds.</summary>
    public string? Outcome { get; init; }

    /// <summary>What mended the machine, in words; jobs only.</summary>
    public string? Fix { get; init; }

    /// <summary>Closed, else opened; null for other kinds.</summary>
    public DateTimeOffset? Date { get; init; }

    /// <summary>Jobs whose repair held.</summary>
    public Hold Hold { get; init; }

    /// <summary>A note, with the names of the notes it refers to.</summary>
    /// <param name="find">Gives the note with an id; null when there is none.</param>
    public static IndexedNote From(Note note, Func<string, Note?> find) => new NoteWords(find).Of(note);

    /// <summary>A note that could not be read is still found by its raw text.</summary>
    public static IndexedNote Unreadable(string path, string text) =>
        new(path, UnreadableKind, path) { Names = [path], Body = text };
}

/// <summary>How well a repair is known to have held.</summary>
public enum Hold
{
    NotMended,
    Mended,

    /// <summary>Heard of as good, or tried again, after it was mended.</summary>
    Held,
}
