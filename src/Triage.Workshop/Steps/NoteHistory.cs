using System.Collections.Immutable;
using System.Text;
using Triage.Notes;
using Triage.Notes.Kinds;
using Triage.Workshop.Books;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Steps;

/// <summary>What steps and saves replaced in a note, or in the bench's settings: seen, brought back, and forgotten when the owner asks.</summary>
public sealed class NoteHistory
{
    private readonly LiveBooks bench;
    private readonly NoteEditing texts;

    internal NoteHistory(LiveBooks bench, NoteEditing texts) => (this.bench, this.texts) = (bench, texts);

    /// <summary>All versions kept of a note, the newest first.</summary>
    /// <param name="note">Its id, or the path of its file in the book: a note that is gone or cannot be read has a history too.</param>
    /// <returns>Null when there is no such note, and nothing is kept under that name.</returns>
    public NotePast? Of(string note)
    {
        if (Meant(note) is not { } meant)
            return null;
        var now = meant.Book.Read(meant.Place.Path);
        var past = meant.Book.PastOf(meant.Place.Path).Reverse().DistinctBy(s => s.Sha256).Select(Version).ToImmutableArray();
        return new(meant.Place, now is null ? null : TextOf(now), FileVersion.Of(now), past, meant.Book.Source.Writable);
    }

    /// <summary>Puts a version in the place of what the file holds now, which is kept in its turn. It is checked as a text that somebody typed.</summary>
    /// <param name="note">As for <see cref="Of"/>.</param>
    /// <param name="version">Of the list, or enough of its beginning.</param>
    /// <param name="since">Version of the file that the person saw; null for whatever it holds now.</param>
    public NoteSaved BringBack(string note, string version, string? since = null)
    {
        if (Meant(note) is not { } meant)
            return new(WorkshopRefusals.NoHistory(note), []);
        if (!meant.Book.Source.Writable)
            return new(WorkshopRefusals.NotEditable(meant.Place.Path, $"book “{meant.Place.Book}” was opened for reading only."), []);
        if (meant.Book.PastOf(meant.Place.Path).LastOrDefault(s => version.Length > 0 && s.Sha256.StartsWith(version, StringComparison.Ordinal)) is not { } past)
            return new(WorkshopRefusals.NoSuchVersion(note, version), []);
        var now = meant.Book.Read(meant.Place.Path);
        if (since is not null && since != FileVersion.Of(now))
            return new(WorkshopRefusals.TextChangedMeanwhile(meant.Place.Path), []);
        return meant.Place.Path == SettingsFile.Name
            ? Settings(meant.Book, now, past.Content.ToArray())
            : texts.Checked(meant.Note, meant.Place, meant.Book, now, past.Content.ToArray());
    }

    /// <summary>Forgets all versions of a note, refused ones too. What the file holds now stays, and so does what a backup holds.</summary>
    /// <param name="note">As for <see cref="Of"/>.</param>
    public Refusal? Erase(string note) =>
        Meant(note) is not { } meant ? WorkshopRefusals.NoHistory(note)
        : meant.Book.Source.Writable ? meant.Book.Forget(meant.Place.Path)
        : WorkshopRefusals.NotEditable(meant.Place.Path, $"book “{meant.Place.Book}” was opened for reading only.");

    private NoteSaved Settings(BookFolder book, byte[]? now, byte[] past)
    {
        if (SettingsFile.Of(past).Problems is { IsEmpty: false } problems)
            return new(null, problems);
        var refused = now is null ? book.Create(SettingsFile.Name, past) : book.Replace(SettingsFile.Name, now, past);
        bench.Reread(book, [SettingsFile.Name]);
        return new(refused, []);
    }

    private (BookFolder Book, NotePlace Place, Note? Note)? Meant(string note)
    {
        if (bench.Current.Notes.Find<Note>(note) is { } known && bench.FolderOf(known.Place) is { } folder)
            return (folder, known.Place, known);
        if (bench.Home is not { } home || home.WithPast.Where(p => p == note || Path.GetFileNameWithoutExtension(p) == note).ToList() is not [var path, ..])
            return null;
        var place = new NotePlace(home.Source.Name, path);
        return (home, place, bench.Current.Notes.All.FirstOrDefault(n => n.Place == place));
    }

    private static NoteVersion Version(PastState state) =>
        new(state.Sha256[..FileVersion.Digits], state.At, state.Content.Length, TextOf(state.Content.Span));

    private static string TextOf(ReadOnlySpan<byte> bytes) => Encoding.UTF8.GetString(bytes).TrimStart('\uFEFF');
}

/// <summary>A note and what was replaced in it.</summary>
/// <param name="Text">What its file holds now; null when it is gone.</param>
/// <param name="Now">Version of that, to be given back when bringing one back.</param>
/// <param name="Versions">The newest first.</param>
/// <param name="Writable">False when its book was opened for reading only.</param>
public sealed record NotePast(NotePlace Place, string? Text, string Now, ImmutableArray<NoteVersion> Versions, bool Writable)
{
    /// <summary>The text that a version was replaced with: the next newer one, or what the file holds now.</summary>
    public string? ReplacedBy(NoteVersion version) => Versions.IndexOf(version) is > 0 and var at ? Versions[at - 1].Text : Text;

    /// <param name="version">Or enough of its beginning.</param>
    public NoteVersion? Find(string version) => version.Length == 0 ? null : Versions.FirstOrDefault(v => v.Version.StartsWith(version, StringComparison.Ordinal));
}

/// <summary>A note as it was.</summary>
/// <param name="Version">Digest of what the file held.</param>
/// <param name="Until">When it was replaced.</param>
/// <param name="Bytes">Length of the file.</param>
public sealed record NoteVersion(string Version, DateTimeOffset Until, int Bytes, string Text)
{
    /// <summary>What replaced it, in words.</summary>
    /// <param name="after">The text that took its place; null when the file is gone.</param>
    public string Replaced(string? after)
    {
        if (after is null)
            return "then the file went";
        var changes = LineChanges.Between(Text, after);
        var (came, went) = (changes.Count(c => c.Fate == LineFate.Came), changes.Count(c => c.Fate == LineFate.Went));
        return (came, went) switch
        {
            (0, 0) => "then only its line ends changed",
            (_, 0) => $"then {Lines(came)} came",
            (0, _) => $"then {Lines(went)} went",
            _ => $"then {Lines(came)} came and {Lines(went)} went",
        };
    }

    private static string Lines(int count) => count == 1 ? "1 line" : FormattableString.Invariant($"{count} lines");
}
