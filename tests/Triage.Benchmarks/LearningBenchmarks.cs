using BenchmarkDotNet.Attributes;
using Triage.Reasoning.Learning;
using Triage.Reasoning.Tests.Learning;

namespace Triage.Benchmarks;

/// <summary>One more job on top of many.</summary>
[MemoryDiagnoser]
public class LearningBenchmarks
{
    private readonly JobRecord _next = SmallBench.Job("next", "fuse-open", ("lamp", "dark"));
    private Learned _learned = SmallBench.Learn();

    [Params(1_000, 10_000, 100_000)]
    public int Jobs { get; set; }

    [GlobalSetup]
    public void Learn() => _learned = SmallBench.Learn(SmallBench.Random(1, Jobs));

    [Benchmark]
    public Learned OneMoreJob() => _learned.With(_next);

    [Benchmark]
    public Learned OneJobFewer() => _learned.Without(SmallBench.Job("job-7", "fuse-open"));
}
