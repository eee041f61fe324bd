using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Search.Meaning;
using Triage.Tools.Exam.Cases;
using Triage.Tools.Exam.Paper;
using Triage.Tools.Exam.Playing;
using Triage.Workshop;

namespace Triage.Tools.Exam;

/// <summary>Keys that wait to be filled in: what the product may show for each case.</summary>
internal sealed class Keys(Options options, SentenceVectors meaning, TextWriter output)
{
    public async Task Of(ImmutableArray<ExamCase> cases)
    {
        await using var bench = ExamBench.Open("empty", Path.Combine(options.Root, "kb"), meaning);
        foreach (var line in cases.SelectMany(exam => bench.WithJob(TakenIn.Of(exam), job => LinesOf(exam, bench.Live.Current, job), refused => [$"# {exam.Id}: {refused}"])))
            output.WriteLine(line);
    }

    private static ImmutableArray<string> LinesOf(ExamCase exam, Bench now, Job job) => now.ScopeOf(job) is { } scope
        ? [.. new IdsOfCase(exam, now.Notes, scope, job).Lines()]
        : [$"# {exam.Id}: no note knows “{exam.Class}”"];
}
