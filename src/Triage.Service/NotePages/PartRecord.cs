using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Service.Shown;
using Triage.Workshop;

namespace Triage.Service.NotePages;

/// <summary>What the book holds of one part of a device.</summary>
/// <param name="Class">Null when no note knows it.</param>
/// <param name="Tests">That measure it, in its role or wherever it sits.</param>
/// <param name="Readings">Taken at it on this device, newest job first.</param>
/// <param name="Causes">Jobs on this device in which it was the cause, newest first.</param>
internal sealed record PartRecord(
    DevicePart Part, PartClass? Class, ImmutableArray<Test> Tests, ImmutableArray<(Job Job, Read Entry)> Readings, ImmutableArray<(Job Job, Fault Fault)> Causes)
{
    /// <returns>Null when the device lists no such designator.</returns>
    public static PartRecord? Of(Bench now, Device device, string designator)
    {
        if (device.Parts.FirstOrDefault(p => designator.Equals(p.Designator, StringComparison.OrdinalIgnoreCase)) is not { } part)
            return null;
        var jobs = now.Notes.Jobs.Where(j => j.Device == device.Id).OrderByDescending(j => j.Opened).ThenByDescending(j => j.Id, StringComparer.Ordinal).ToList();
        return new(
            part,
            now.Notes.Find<PartClass>(part.Part),
            [.. now.Notes.Of<Test>().Where(t => Measures(t, part))],
            [.. jobs.SelectMany(j => j.Log.OfType<Read>().Where(r => At(r, designator)).Select(r => (j, r)))],
            [.. jobs.SelectMany(j => j.Causes.Select(c => now.Notes.Find<Fault>(c.Fault)).OfType<Fault>().Where(f => IsOf(f, part)).Select(f => (j, f)))]);
    }

    private static bool Measures(Test test, DevicePart part) =>
        test.Reveals is null && (test.MeasuresRole is not null || test.MeasuresPart is not null)
        && (test.MeasuresRole is null || test.MeasuresRole == part.Role) && (test.MeasuresPart is null || test.MeasuresPart == part.Part);

    private static bool At(Read entry, string designator) =>
        PartWords.Mentions(entry.From, designator) || PartWords.Mentions(entry.To, designator) || PartWords.Mentions(entry.Text, designator);

    private static bool IsOf(Fault fault, DevicePart part) =>
        (fault.Part is not null || fault.Role is not null) && (fault.Part is null || fault.Part == part.Part) && (fault.Role is null || fault.Role == part.Role);
}
