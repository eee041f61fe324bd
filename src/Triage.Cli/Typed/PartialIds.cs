using Triage.Notes;
using Triage.Notes.Kinds;
using Triage.Workshop;
using Triage.Workshop.Jobs;
using Triage.Workshop.Knowledge;

namespace Triage.Cli.Typed;

/// <summary>Finds what an id means that was typed in full or in part: whole, as a name, as an end, as a beginning, anywhere; the first way that leaves one.</summary>
internal static class PartialIds
{
    /// <exception cref="RefusedException">None, or several.</exception>
    public static Job Job(Bench bench, string typed) =>
        bench.Notes.Find<Job>(typed)
        ?? bench.Notes.Find<Job>(Only("job", typed, [.. bench.Notes.Jobs.Where(j => j.IsOpen).Select(j => j.Id)], [.. bench.Notes.Jobs.Select(j => j.Id)]))!;

    /// <exception cref="RefusedException">None, or several.</exception>
    public static T Note<T>(Bench bench, string kind, string typed) where T : Note =>
        bench.Notes.Find<T>(typed) ?? bench.Notes.Of<T>().FirstOrDefault(n => n.Name.Equals(typed.Trim(), StringComparison.OrdinalIgnoreCase))
        ?? bench.Notes.Find<T>(Only(kind, typed, [.. bench.Notes.Of<T>().Select(n => n.Id)]))!;

    /// <summary>Any note, jobs too.</summary>
    /// <exception cref="RefusedException">None, or several.</exception>
    public static Note AnyNote(Bench bench, string typed) =>
        bench.Notes.Find<Note>(typed) ?? bench.Notes.Find<Note>(Only("note", typed, [.. bench.Notes.All.Select(n => n.Id)]))!;

    /// <exception cref="RefusedException">None, or several.</exception>
    public static string Value(string of, string typed, IReadOnlyCollection<string> values)
    {
        var said = typed.Trim().ToLowerInvariant();
        return Match(said, values) is [var only] ? only : throw new RefusedException(CommandTexts.NoSuchValue(of, typed, values));
    }

    /// <summary>A fix that some fault note defines; those of the machine come first.</summary>
    /// <exception cref="RefusedException">None, or several.</exception>
    public static string Fix(Bench bench, Job job, string typed) => Only("fix", typed, FixesHere(bench, job), Fixes(bench));

    /// <summary>A reset or fix whose lasting can be noted: one that this job tried, newest first.</summary>
    /// <exception cref="RefusedException">None, or several.</exception>
    public static string Action(Bench bench, Job job, string typed)
    {
        string[] tried = [.. job.Log.Select(e => e.Action()).OfType<string>().Reverse().Distinct()];
        if (tried.Length == 0)
            throw new RefusedException(CommandTexts.NothingTried(job.Id));
        string[] forms = [.. tried.Select(id => bench.Notes.Find<Reset>(id)?.FormOf ?? id)];
        var meant = Only("reset or fix of this job", typed, tried, forms);
        return tried.Contains(meant) ? meant : tried[Array.IndexOf(forms, meant)];
    }

    /// <summary>The exact form of a general reset for the job's machine, where it has one.</summary>
    /// <exception cref="RefusedException">None, or several.</exception>
    public static Reset Reset(Bench bench, Job job, string typed)
    {
        string[] here = [.. bench.ScopeOf(job)?.Resets.Select(r => r.Id) ?? []];
        var meant = bench.Notes.Find<Reset>(typed)
            ?? bench.Notes.Find<Reset>(Only("reset", typed, here, [.. bench.Notes.Of<Reset>().Select(r => r.Id)]))!;
        return bench.Notes.Of<Reset>().FirstOrDefault(r => r.FormOf == meant.Id && r.Device is not null && r.Device == job.Device) ?? meant;
    }

    private static string[] Fixes(Bench bench) => FixesOf(bench.Notes.Of<Fault>());

    private static string[] FixesHere(Bench bench, Job job) => FixesOf(bench.ScopeOf(job)?.Faults ?? []);

    private static string[] FixesOf(IEnumerable<Fault> faults) =>
        [.. faults.SelectMany(f => f.Mends).Select(m => m.Id).Append(AlwaysThere.HandBack).Distinct()];

    /// <param name="circles">Where to look first, then wider.</param>
    private static string Only(string kind, string typed, params IReadOnlyCollection<string>[] circles)
    {
        var said = typed.Trim().ToLowerInvariant();
        if (circles.FirstOrDefault(ids => ids.Contains(said)) is not null)
            return said;
        var met = circles.Select(ids => Match(said, ids)).FirstOrDefault(m => m.Length > 0) ?? [];
        return met switch
        {
            [var only] => only,
            [] => throw new RefusedException(CommandTexts.NoSuch(kind, typed, Nearest.To(said, circles[^1]))),
            _ => throw new RefusedException(CommandTexts.Ambiguous(kind, typed, met)),
        };
    }

    private static string[] Match(string said, IReadOnlyCollection<string> ids)
    {
        if (said.Length == 0)
            return [];
        Func<string, bool>[] ways =
        [
            id => id == said,
            id => id.EndsWith("-" + said, StringComparison.Ordinal),
            id => id.StartsWith(said, StringComparison.Ordinal),
            id => id.Contains(said, StringComparison.Ordinal),
        ];
        var all = ways.Select(way => ids.Where(way).Order(StringComparer.Ordinal).ToArray()).Where(m => m.Length > 0).ToList();
        return all.FirstOrDefault(m => m.Length == 1) ?? all.LastOrDefault() ?? [];
    }
}
