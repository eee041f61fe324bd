using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Steps;

/// <summary>What was missed in the middle of a job and gets a note of its own, in the bench's own book.</summary>
public sealed class Listing
{
    private readonly LiveBooks bench;
    private readonly JobNotes notes;

    internal Listing(LiveBooks bench) => (this.bench, notes) = (bench, new(bench));

    /// <param name="says">The ways people put it; may be empty.</param>
    public StepResult Finding(string job, string words, ImmutableArray<string> says) =>
        New<Finding>(job, words, from => from.Finding(words.Trim(), says));

    /// <summary>A fault that often shows what this job showed.</summary>
    public StepResult Fault(string job, string words, string? part, string? fix) =>
        part is not null && Book.Find<PartClass>(part) is null ? Refuse(WorkshopRefusals.NoSuch("part class", part, []))
        : New<Fault>(job, words, from => from.Fault(words.Trim(), part, fix));

    public StepResult Test(string job, NewTest test) =>
        Book.Find<Finding>(test.Reveals) is null ? Refuse(WorkshopRefusals.NoSuch("finding", test.Reveals, []))
        : test.Takes < 0 ? Refuse(WorkshopRefusals.Negative("time", test.Takes))
        : New<Test>(job, test.Name, from => from.Test(test with { Name = test.Name.Trim() }));

    /// <summary>A model of a kind of machine that is known; the job is of this model from now on.</summary>
    /// <param name="class">Device class id.</param>
    public StepResult Device(string job, string name, string? maker, string @class)
    {
        if (Book.Find<DeviceClass>(@class) is null)
            return Refuse(WorkshopRefusals.NoSuch("kind of machine", @class, []));
        Device? made = null;
        var written = New<Device>(job, name, from => made = from.Device(name.Trim(), maker, @class), device => notes.RefusesDevice(job, device.Id));
        return written.Refused is null && made is not null ? notes.SetDevice(job, made.Id) : written;
    }

    private Notebook Book => bench.Current.Notes;

    /// <param name="unless">Why it is not to be written; null to write it.</param>
    private StepResult New<T>(string id, string name, Func<FromJob, Note> make, Func<Note, Refusal?>? unless = null) where T : Note
    {
        if (Book.Find<Job>(id) is not { } job)
            return Refuse(notes.Missing(id));
        if (string.IsNullOrWhiteSpace(name))
            return Refuse(WorkshopRefusals.NothingSaid("name"));
        if (name.Length > Limits.Line)
            return Refuse(WorkshopRefusals.TooLong("name", name.Length, Limits.Line));
        if (Book.Of<T>().FirstOrDefault(n => n.Name.Equals(name.Trim(), StringComparison.OrdinalIgnoreCase)) is { } listed)
            return Refuse(WorkshopRefusals.ListedAlready(listed));
        var note = make(new(Book, job));
        var refused = unless?.Invoke(note) ?? notes.CreateNote(note);
        return new() { Job = Book.Find<Job>(id), Refused = refused };
    }

    private static StepResult Refuse(Refusal refused) => new() { Refused = refused };
}
