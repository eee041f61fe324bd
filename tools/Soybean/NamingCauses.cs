using System.Collections.Immutable;
using Triage.Reasoning.Learning;

namespace Triage.Tools.Soybean;

/// <summary>Which of the listed causes it is when it is exactly one and nothing but findings is known; as the bench's answers have it.</summary>
internal sealed class NamingCauses(Learned learned, ImmutableArray<string> causes, ImmutableArray<string> levels)
{
    private readonly DependentFindings findings = learned.Dependent(levels) ?? throw new InvalidOperationException("Too few cases to show how findings come together.");
    private readonly double[] logShares = [.. causes.Select(cause => Math.Log(learned.Shares(KnownScope.Of("named", causes), levels)[cause].Mean))];

    public ImmutableArray<double> Posterior(IReadOnlyCollection<CheckedFinding> seen) => Posterior(Logs(seen), seen.Count);

    /// <summary>What each answer to one more question would lead to; its chance is that under each cause, averaged over causes.</summary>
    public ImmutableArray<Foreseen> Ask(IReadOnlyCollection<CheckedFinding> seen, string finding, ImmutableArray<string> values)
    {
        var before = Logs(seen);
        var now = Posterior(before, seen.Count);
        return [.. values.Select(value =>
        {
            var after = Logs([.. seen, new(finding, value)]);
            return new Foreseen(value, now.Select((p, c) => p * Math.Exp(after[c] - before[c])).Sum(), Posterior(after, seen.Count + 1));
        })];
    }

    private double[] Logs(IEnumerable<CheckedFinding> seen) => [.. causes.Select(cause => findings.LogLikelihood(cause, seen))];

    private ImmutableArray<double> Posterior(double[] logs, int known)
    {
        var temperature = findings.Strength.Temperature(known);
        double[] tempered = [.. logs.Select((log, c) => logShares[c] + log / temperature)];
        var most = tempered.Max();
        double[] odds = [.. tempered.Select(t => Math.Exp(t - most))];
        return [.. odds.Select(o => o / odds.Sum())];
    }
}

/// <summary>One answer to a question.</summary>
/// <param name="Chance">P(value | what is known); all answers sum to about 1.</param>
/// <param name="Posterior">P(cause | what is known and this), one per cause.</param>
internal sealed record Foreseen(string Value, double Chance, ImmutableArray<double> Posterior);
