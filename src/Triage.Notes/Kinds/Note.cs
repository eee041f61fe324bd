using System.Collections.Immutable;

namespace Triage.Notes.Kinds;

/// <summary>A note of the bench book: front matter read into a record, and the Markdown below it.</summary>
/// <param name="Id">Never changes; unique in all open books; lower case letters, digits, hyphens.</param>
/// <param name="Name">What people call it.</param>
public abstract record Note(string Id, string Name)
{
    public abstract NoteKind Kind { get; }

    /// <summary>Format that its file says.</summary>
    public int Format { get; init; } = NoteFormat.Current;

    /// <summary>Ids it had before, or that a note merged into it had.</summary>
    public ImmutableArray<string> Formerly { get; init; } = [];

    /// <summary>Other names for it; searched, and synonyms for words in questions.</summary>
    public ImmutableArray<string> Also { get; init; } = [];

    /// <summary>Markdown below the front matter.</summary>
    public string Body { get; init; } = "";

    /// <summary>Every id that it names, in the order of the file.</summary>
    public ImmutableArray<Reference> References { get; init; } = [];

    /// <summary>Where it was read.</summary>
    public NotePlace Place { get; init; } = NotePlace.Nowhere;
}

/// <param name="Book">Name of the book it belongs to.</param>
/// <param name="Path">Relative to the book's folder, with forward slashes.</param>
public sealed record NotePlace(string Book, string Path)
{
    public static NotePlace Nowhere { get; } = new("", "");
}

/// <summary>The kinds of note.</summary>
public enum NoteKind
{
    DeviceClass,
    Device,
    PartClass,
    Fault,
    Finding,
    Test,
    Reset,
    Job,
}
