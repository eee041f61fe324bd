using System.Collections.Immutable;
using Triage.Reasoning.Learning;

namespace Triage.Reasoning.Tests.Learning;

/// <summary>Single causes by shares and dependent findings, tempered, as the bench ranks them where exactly one is there.</summary>
public sealed class SoybeanRanking(ImmutableArray<string> classes, Learned learned, ImmutableArray<string> levels)
{
    readonly double[] shares = [.. classes.Select(c => learned.Share(c, levels).Mean)];
    readonly DependentFindings dependent = learned.Dependent(levels)!;

    public Dependence Strength => dependent.Strength;

    /// <summary>P(cause | these findings and exactly one cause), one per class.</summary>
    public double[] Posterior(IReadOnlyList<CheckedFinding> seen) => Tempered(Logs(seen), seen.Count);

    /// <summary>What each answer to one more finding would lead to: its chance, P(value | cause, what is known) averaged over causes, and the posterior then.</summary>
    public IEnumerable<(double Chance, double[] Posterior)> Ask(IReadOnlyList<CheckedFinding> seen, string finding, IEnumerable<string> values)
    {
        double[] before = Logs(seen), now = Tempered(before, seen.Count);
        return values.Select(value =>
        {
            double[] after = Logs([.. seen, new(finding, value)]);
            return (now.Select((p, c) => p * Math.Exp(after[c] - before[c])).Sum(), Tempered(after, seen.Count + 1));
        });
    }

    double[] Logs(IReadOnlyList<CheckedFinding> seen) => [.. classes.Select(c => dependent.LogLikelihood(c, seen))];

    double[] Tempered(double[] logs, int known)
    {
        double[] scores = [.. logs.Select((l, c) => Math.Log(shares[c]) + l / Strength.Temperature(known))];
        double sum = scores.Sum(score => Math.Exp(score - scores.Max()));
        return [.. scores.Select(score => Math.Exp(score - scores.Max()) / sum)];
    }
}
