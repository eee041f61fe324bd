using Triage.Reasoning.Learning;
using Triage.Reasoning.Tests.Learning;

namespace Triage.Benchmarks;

/// <summary>What closing, editing and taking out a job costs as jobs grow; findings come together, so that pairs of them are counted too.</summary>
internal static class LearningGrowth
{
    private static readonly int[] Sizes = [1_000, 10_000, 100_000];

    public static void Print(TextWriter to)
    {
        var learned = Array.ConvertAll(Sizes, size => SmallBench.Learn(Jobs(size)));
        to.WriteLine($"{"findings that others depend on, by size",-58} {string.Join(", ", learned.Select(l => l.Epoch.Dependence.Parents.Length)),10}");
        Lines(to, "one job closed", learned, (l, next) => l.With(next));
        Lines(to, "an old job taken out", learned, (l, _) => l.Without(Old));
        Lines(to, "an old job edited", learned, (l, _) => l.Without(Old).With(Edited));
        Lines(to, "a question of 3 findings", learned, (l, next) => l.Dependent(SmallBench.OwnDevice)?.LogLikelihood("fuse-open", next.Checked) ?? 0);
    }

    private static readonly JobRecord Old = Jobs(10)[7], Edited = Old with { Weight = 0.25, Tried = [new("cold-start", true, null, 40)] };

    private static void Lines(TextWriter to, string what, Learned[] learned, Func<Learned, JobRecord, object> run)
    {
        JobRecord[] next = [.. Enumerable.Range(0, 12).Select(i => Coupled(SmallBench.Job($"next {i}", "fuse-open", ("lamp", i % 2 == 0 ? "dark" : "lit"), ("sound", "clear"), ("code", "1"))))];
        double[] cost = Array.ConvertAll(learned, l => Measure.Median(next, job => run(l, job)));
        for (var i = 1; i < cost.Length; i++)
            to.WriteLine(FormattableString.Invariant($"{what + $": of {Sizes[i]:N0} jobs / of {Sizes[0]:N0}",-58} {cost[i] / cost[0],10:G3}"));
    }

    private static JobRecord[] Jobs(int count) => [.. SmallBench.Random(1, count).Select(Coupled)];

    /// <summary>No sound where the lamp is dark.</summary>
    private static JobRecord Coupled(JobRecord job) => job with
    {
        Checked = [.. job.Checked.Select(seen => seen.Finding == "sound" ? seen with { Value = job.Checked.Any(c => c.Value == "dark") ? "none" : "clear" } : seen)],
    };
}
