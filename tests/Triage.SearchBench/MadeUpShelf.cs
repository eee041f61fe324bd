using MadeUpJobs;
using Triage.Notes.Kinds;
using Triage.Workshop.Knowledge;

namespace Triage.SearchBench;

/// <summary>A book of any size: the notes of the invented workshop, then made-up jobs. The same seed gives the same notes.</summary>
internal static class MadeUpShelf
{
    private const int JobsOfOneWorkshop = 2000;

    public static Note[] Of(Notebook notes, int count, int seed)
    {
        Note[] known = [.. notes.All.OrderBy(n => n.Id, StringComparer.Ordinal).Take(count)];
        var jobs = count - known.Length;
        var made = Enumerable.Range(0, (jobs + JobsOfOneWorkshop - 1) / JobsOfOneWorkshop).AsParallel().AsOrdered()
            .SelectMany(w => new Years(notes, seed + w).Jobs(JobsOfOneWorkshop).Select((j, i) => WithRareWords(j, w, new Random(HashOf(seed, w, i)))).ToList());
        return [.. known, .. made.Take(jobs)];
    }

    /// <summary>Markings, names and places of which a real shelf has ever more, and the templates do not.</summary>
    private static Job WithRareWords(Job job, int workshop, Random random) => job with
    {
        Id = $"{job.Id}-{workshop}",
        Log =
        [
            .. job.Log,
            new QuickLine(job.Opened ?? default, $"{RareWords.Designator(random)} {random.Any(RareWords.States)}, {random.Any(RareWords.Ratings)}, {random.Any(RareWords.Results)}"),
        ],
        Body = $"{job.Body}The {random.Any(RareWords.Parts)} is marked {RareWords.Marking(random)}; from {RareWords.Name(random)}, {random.Any(RareWords.Lots)} {random.Next(1, 4000)}.\n",
    };

    private static int HashOf(int seed, int workshop, int job) => unchecked((((seed * 31) + workshop) * 100_003) + job);
}
