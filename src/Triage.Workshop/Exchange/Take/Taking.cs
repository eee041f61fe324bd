using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Workshop.Books;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Exchange.Take;

/// <summary>Copies somebody else's book to a place of its own beside one's own book, and takes it away again as a whole.</summary>
public static class Taking
{
    /// <summary>What <see cref="Take"/> would do; nothing is written.</summary>
    /// <param name="from">Folder or zip.</param>
    /// <param name="open">Notes of all open books: what they have is not taken a second time.</param>
    public static TakeResult Preview(string from, string name, Notebook open, CancellationToken stop = default) =>
        Told(from, () =>
        {
            using var parcel = Parcel.Open(from);
            return Sorting.Of(parcel, from, name, open, stop).Result;
        });

    /// <summary>All of it appears at once, or none. Own notes stay as they are; a note that differs from an open one with the same id stays out.</summary>
    /// <param name="books">The open books.</param>
    /// <param name="at">When.</param>
    public static TakeResult Take(
        string from, string name, Trust trust, BookSource own, IReadOnlyCollection<BookSource> books, Notebook open, DateTimeOffset at,
        IProgress<int>? progress = null, CancellationToken stop = default) =>
        Told(own.Folder, () =>
        {
            if (name.Length == 0 || NoteIds.From(name, "") != name)
                throw new SharingRefusedException(SharingTexts.BadName(name));
            var shelf = TakenBook.Shelf(own.Folder);
            var place = Path.Combine(shelf, name);
            if (Path.Exists(place) || books.Any(b => b.Name == name))
                throw new SharingRefusedException(SharingTexts.NameTaken(name));
            using var parcel = Parcel.Open(from);
            var sorted = Sorting.Of(parcel, from, name, open, stop);
            var half = Path.Combine(shelf, $".{name}.half");
            RemoveFolder(half);
            try
            {
                Disk.Real.MakeFolder(half);
                Write(sorted, half, progress, stop);
                new TakenBook(name, place, trust, Path.GetFullPath(from), at).WriteSlip(half);
                Directory.Move(half, place);
                Disk.Real.FlushFolder(shelf);
            }
            catch
            {
                RemoveFolder(half);
                throw;
            }

            return sorted.Result with { Place = place };
        });

    /// <summary>Takes a taken book away as a whole.</summary>
    public static Refusal? Remove(string name, string ownFolder)
    {
        var taken = TakenBook.Beside(ownFolder);
        if (taken.FirstOrDefault(b => b.Name == name) is not { } book)
            return SharingTexts.NotTaken(name, taken.Select(b => b.Name));
        try
        {
            var gone = Path.Combine(TakenBook.Shelf(ownFolder), $".{name}.gone");
            RemoveFolder(gone);
            Directory.Move(book.Folder, gone);
            RemoveFolder(gone);
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return SharingTexts.CannotWrite(book.Folder, e);
        }
    }

    private static void Write(Sorting sorted, string half, IProgress<int>? progress, CancellationToken stop)
    {
        var written = 0;
        foreach (var (path, bytes) in sorted.Files)
        {
            stop.ThrowIfCancellationRequested();
            var file = Path.Combine(half, path);
            WholeFile.Write(file, bytes(), () => true);
            progress?.Report(++written);
        }
    }

    private static void RemoveFolder(string folder)
    {
        if (Directory.Exists(folder))
            Directory.Delete(folder, recursive: true);
    }

    private static TakeResult Told(string folder, Func<TakeResult> take)
    {
        try
        {
            return take();
        }
        catch (SharingRefusedException e)
        {
            return new() { Refused = e.Refusal };
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new() { Refused = SharingTexts.CannotWrite(folder, e) };
        }
    }
}

/// <summary>What of somebody else's book is taken, and what stays out.</summary>
public sealed record TakeResult
{
    /// <summary>Notes taken, by kind.</summary>
    public ImmutableSortedDictionary<NoteKind, int> Taken { get; init; } = ImmutableSortedDictionary<NoteKind, int>.Empty;

    public int Pictures { get; init; }

    /// <summary>Notes that an open book has word for word.</summary>
    public int AlreadyThere { get; init; }

    /// <summary>Jobs not closed yet: they are the other bench's work.</summary>
    public int OpenJobs { get; init; }

    /// <summary>Notes that differ from the one with that id in an open book; that one stays.</summary>
    public ImmutableArray<TakeConflict> Conflicts { get; init; } = [];

    /// <summary>Jobs whose number another job here has: they come in under another id.</summary>
    public ImmutableArray<Renumbered> Renumbered { get; init; } = [];

    /// <summary>What stays out besides, and why.</summary>
    public ImmutableArray<LeftOut> LeftOut { get; init; } = [];

    /// <summary>Where it stands; null in a preview.</summary>
    public string? Place { get; init; }

    public Refusal? Refused { get; init; }
}

/// <param name="Book">The open book whose note stays.</param>
public sealed record TakeConflict(string Id, string Theirs, string Own, string Book);

public sealed record Renumbered(string Id, string Becomes);
