using Triage.Notes;
using Triage.Notes.Kinds;
using Triage.Workshop;

namespace Triage.Service.Http;

/// <summary>Refusals for ids in addresses.</summary>
internal static class NoSuch
{
    public static Refusal Note(string id, Bench bench) => Of("note", id, bench.Notes.All);

    public static Refusal Job(string id, Bench bench) => Of("job", id, bench.Notes.Jobs);

    public static Refusal Device(string id, Bench bench) => Of("device", id, bench.Notes.Of<Device>());

    public static Refusal Drawing(Device device) =>
        new(RefusalKind.NotFound, $"There is no such drawing of {device.Name}.", "The device's note names its drawings: look there whether the file's name is right and the file lies in the book.");

    public static Refusal Entry(string job, int entry) =>
        new(RefusalKind.NotFound, $"Job {job} has no entry {entry} in its log.", "Read the job again: entries count from 0, the oldest first.");

    public static Refusal Version(string note, string version) =>
        new(RefusalKind.NotFound, $"No version “{version}” of {note} is kept.", "Look at the list of its versions: the oldest go when there are many.");

    private static Refusal Of(string kind, string id, IEnumerable<Note> notes) =>
        new(RefusalKind.NotFound, $"There is no {kind} “{id}”.", Nearest.To(id, notes.Select(n => n.Id)) is { } near ? $"Did you mean {near}?" : "Look it up with find.");
}
