using System.Collections.Concurrent;
using Triage.Notes.Kinds;
using Triage.Workshop;
using Triage.Workshop.Answers;

namespace Triage.Service.Shown;

/// <summary>Answers to jobs as long as the bench stays as it is: the shelf asks for many, and most of them again.</summary>
internal sealed class KnownAnswers
{
    private volatile Shelf shelf = new(0);

    public Asked For(Bench bench, Job job)
    {
        var known = shelf;
        if (known.Version != bench.Version)
            shelf = known = new(bench.Version);
        return known.Answers.GetOrAdd(job.Id, _ => bench.AnswerFor(job));
    }

    private sealed record Shelf(long Version)
    {
        public ConcurrentDictionary<string, Asked> Answers { get; } = new(StringComparer.Ordinal);
    }
}
