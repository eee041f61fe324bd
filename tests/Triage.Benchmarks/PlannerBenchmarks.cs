using BenchmarkDotNet.Attributes;
using Triage.Reasoning.Planning;
using Triage.Reasoning.Tests.Planning;

namespace Triage.Benchmarks;

/// <summary>The next step of a small job, three fixes and two tests, beside walking every history of it.</summary>
[MemoryDiagnoser]
public class PlannerBenchmarks
{
    private readonly RepairProblem _problem = RandomProblem.From(seed: 1);

    [Benchmark(Baseline = true)]
    public Advice Exact() => NextStep.Choose(_problem, PlannerBudget.Default);

    [Benchmark]
    public Advice LookAheadAndRollOut() => NextStep.Choose(_problem, PlannerBudget.Default with { Exact = false });

    [Benchmark]
    public double EveryHistory() => Oracle.Optimum(_problem);
}
