using System.Collections.Immutable;
using System.Text;
using Triage.Notes.Kinds;
using Triage.Notes.Parsing;
using Triage.Notes.Writing;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Exchange.Take;

/// <summary>Somebody else's files, note by note against the notes of the open books.</summary>
internal sealed class Sorting
{
    private readonly string name;
    private readonly Notebook open;
    private readonly HashSet<string> ids = new(StringComparer.Ordinal);
    private readonly List<(string Path, Func<byte[]> Bytes)> files = [];
    private readonly List<TakeConflict> conflicts = [];
    private readonly List<Renumbered> renumbered = [];
    private readonly List<LeftOut> leftOut = [];
    private readonly Dictionary<NoteKind, int> taken = [];
    private int pictures, there, openJobs;

    private Sorting(string name, Notebook open) => (this.name, this.open) = (name, open);

    public IReadOnlyList<(string Path, Func<byte[]> Bytes)> Files => files;

    public TakeResult Result => new()
    {
        Taken = taken.ToImmutableSortedDictionary(),
        Pictures = pictures,
        AlreadyThere = there,
        OpenJobs = openJobs,
        Conflicts = [.. conflicts],
        Renumbered = [.. renumbered],
        LeftOut = [.. leftOut],
    };

    /// <exception cref="SharingRefusedException">It holds no note at all.</exception>
    public static Sorting Of(Parcel parcel, string from, string name, Notebook open, CancellationToken stop)
    {
        var sorting = new Sorting(name, open);
        foreach (var file in parcel.Files)
        {
            stop.ThrowIfCancellationRequested();
            if (file.IsNote)
                sorting.Note(file);
            else
                sorting.Picture(file);
        }

        return sorting.ids.Count > 0 ? sorting : throw new SharingRefusedException(SharingTexts.NoNotes(from));
    }

    private void Note(ParcelFile file)
    {
        var bytes = file.Read();
        var reading = NoteReader.Read(name, file.Path, bytes);
        if (reading.Note is not { } note)
            leftOut.Add(new(file.Path, reading.IsNote ? reading.Problems[0].ToString() : "no note: it has no front matter"));
        else if (!ids.Add(note.Id))
            leftOut.Add(new(file.Path, $"a second note with the id {note.Id}"));
        else if (note is Job { IsOpen: true })
            openJobs++;
        else
            Sort(file, note, reading.Text.Editable);
    }

    private void Sort(ParcelFile file, Note note, bool editable)
    {
        if (open.Find<Note>(note.Id) is not { } own)
            Take(file.Path, note, file.Read);
        else if (NoteWriter.New(own) == NoteWriter.New(note))
            there++;
        else if (note is Job theirs && own is Job job && theirs.Opened != job.Opened)
            Renumber(file, note, editable);
        else
            conflicts.Add(new(note.Id, note.Name, own.Name, own.Place.Book));
    }

    /// <summary>Every workshop counts its jobs from one: the same number on another day is another job.</summary>
    private void Renumber(ParcelFile file, Note note, bool editable)
    {
        var id = $"{name}-{note.Id}";
        if (!editable || open.Find<Note>(id) is not null || !ids.Add(id))
        {
            leftOut.Add(new(file.Path, $"another job here has the id {note.Id}"));
            return;
        }

        renumbered.Add(new(note.Id, id));
        Take(file.Path, note, () => Encoding.UTF8.GetBytes(NoteReader.Read(name, file.Path, file.Read()).Text.Set(["id"], YamlValue.Of(id)).Content));
    }

    private void Take(string path, Note note, Func<byte[]> bytes)
    {
        taken[note.Kind] = taken.GetValueOrDefault(note.Kind) + 1;
        files.Add((path, bytes));
    }

    private void Picture(ParcelFile file)
    {
        if (Pictures.Stripped(file.Read()) is null)
        {
            leftOut.Add(new(file.Path, "neither a note nor a sound photo (JPEG, PNG)"));
            return;
        }

        pictures++;
        files.Add((file.Path, file.Read));
    }
}
