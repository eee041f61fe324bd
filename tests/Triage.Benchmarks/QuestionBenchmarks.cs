using BenchmarkDotNet.Attributes;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Learning;

namespace Triage.Benchmarks;

/// <summary>What one question costs, at three sizes.</summary>
[MemoryDiagnoser]
public class QuestionBenchmarks
{
    private Case _case = Case.Large(0);

    [Params(50, 150, 500)]
    public int Roots { get; set; }

    [GlobalSetup]
    public void Make() => _case = Case.Of(seed: 1, Roots, findings: Roots * 3 / 5, links: 30, abnormal: 12, normal: 18);

    [Benchmark(Baseline = true)]
    public Posterior Posterior() => PosteriorInference.Of(_case.Network, _case.Evidence);

    [Benchmark]
    public HypothesisSet Likeliest400() => Hypotheses.Of(_case.Network, _case.Evidence, most: 400, bound: 1e-4);

    [Benchmark]
    public HypothesisSet Likeliest2000() => Hypotheses.Of(_case.Network, _case.Evidence, most: 2000, bound: 1e-6);

    [Benchmark]
    public int EveryWeightOfEvidence() => WeightOfEvidence.Of(_case.Network, _case.Evidence).Length;

    [Benchmark]
    public SampledIntervals Intervals() => SampledIntervals.Of(_case.Network, _case.Evidence, seed: 1);

    [Benchmark]
    public int SensitivityOfTheFirstPlace() => Sensitivity.Of(_case.Network, _case.Evidence).Length;
}
