using BenchmarkDotNet.Attributes;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Tests.Inference;

namespace Triage.Benchmarks;

/// <summary>The posterior of a network small enough for the other ways.</summary>
[MemoryDiagnoser]
public class PosteriorBenchmarks
{
    private readonly Case _case = Case.Of(seed: 1, roots: 7, findings: 8, links: 6, abnormal: 4, normal: 3);

    [Benchmark(Baseline = true)]
    public Posterior Product() => PosteriorInference.Of(_case.Network, _case.Evidence);

    [Benchmark]
    public double[][] EveryCombinationOfStates() => NaiveEnumeration.Of(_case.Network, _case.Evidence);

    [Benchmark]
    public BruteForce EveryStateAndFate() => BruteForce.Of(_case.Network, _case.Evidence);
}
