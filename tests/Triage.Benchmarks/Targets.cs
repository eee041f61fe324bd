using Triage.Reasoning.Inference;

namespace Triage.Benchmarks;

/// <summary>The sizes that must be answered while one waits: processor milliseconds, median and 99th percentile over seeds, and what was left out.</summary>
internal static class Targets
{
    public static void Print(TextWriter to)
    {
        Case[] large = [.. Enumerable.Range(0, 100).Select(Case.Large)];
        Line(to, "posterior, 500 roots", large, c => PosteriorInference.Of(c.Network, c.Evidence).LeftOut);
        Line(to, "400 hypotheses to 1e-4", large, c => Hypotheses.Of(c.Network, c.Evidence, 400, 1e-4).LeftOut);
        Line(to, "2000 hypotheses to 1e-6", large, c => Hypotheses.Of(c.Network, c.Evidence).LeftOut);
        Line(to, "weights of evidence, 500 roots", large[..10], c => 0 * WeightOfEvidence.Of(c.Network, c.Evidence).Length);
        Line(to, "sensitivity, 500 roots", large[..10], c => 0 * Sensitivity.Of(c.Network, c.Evidence).Length);
        Case[] shared = [.. Enumerable.Range(0, 8).Select(Case.Shared)];
        Line(to, "posterior, 35 nominal findings shared by 19 roots", shared, c => PosteriorInference.Of(c.Network, c.Evidence).LeftOut);
        Line(to, "400 hypotheses of them to 1e-4", shared, c => Hypotheses.Of(c.Network, c.Evidence, 400, 1e-4).LeftOut);
        Case[] impossible = [.. Enumerable.Range(0, 8).Select(Case.Contradictory)];
        Line(to, "conflict of three, 500 roots", impossible, c => PosteriorInference.Of(c.Network, c.Evidence).Conflict.Length == 3 ? 0 : 1);
        foreach (var (name, linked) in new[] { ("simulated", Linked(true)), ("random", Linked(false)) })
        {
            Line(to, $"2000 hypotheses, 20 linked roots, 40 abnormal, {name}", linked, c => Hypotheses.Of(c.Network, c.Evidence).LeftOut);
            Line(to, $"posterior, 20 linked roots, 40 abnormal, {name}", linked, c => PosteriorInference.Of(c.Network, c.Evidence).LeftOut);
        }

        static Case[] Linked(bool simulated) => [.. Enumerable.Range(0, 24).Select(s => Case.Linked(s, simulated))];
    }

    private static void Line(TextWriter to, string what, Case[] cases, Func<Case, double> leftOut)
    {
        var left = new List<double>();
        var ms = Measure.Each(cases, c =>
        {
            left.Add(leftOut(c));
            return left;
        }, best: 2);
        to.WriteLine(FormattableString.Invariant(
            $"{what,-56} p50 {Measure.Quantile(ms, 0.5),7:F1} p99 {Measure.Quantile(ms, 0.99),7:F1} ms, left out p50 {Measure.Quantile(left, 0.5):E0} most {left.Max():E0}"));
    }
}
