using System.Collections.Immutable;

namespace Triage.Reasoning.Learning;

/// <summary>
/// Ranks single causes when findings depend on each other beyond the cause, by <see cref="OneDependence"/>; the logarithm of
/// P(findings | cause) is divided by 1 + (n / N)², n findings known, N the reach. κ and N are chosen by cross-validation
/// within the jobs learned from. For the bench's single-cause view only: this is not one joint model, so it does not belong
/// into look-ahead over several causes.
/// </summary>
public sealed class DependentFindings
{
    readonly ImmutableArray<KnownFinding> findings;
    readonly ValueNumbers numbers;
    readonly OneDependence likelihood;
    readonly double[] shares;

    DependentFindings(ImmutableArray<KnownFinding> findings, ValueNumbers numbers, OneDependence likelihood, double[] shares, Dependence strength) =>
        (this.findings, this.numbers, this.likelihood, this.shares, Strength) = (findings, numbers, likelihood, shares, strength);

    /// <summary>What cross-validation chose.</summary>
    public Dependence Strength { get; }

    /// <summary>Learns pairs of findings from the jobs with one sure cause among those given; the rest comes from what is learned already at these levels.</summary>
    public static DependentFindings Learn(Learned learned, ImmutableArray<string> faults, ImmutableArray<KnownFinding> findings, ImmutableArray<string> levels, IEnumerable<JobRecord> jobs)
    {
        var numbers = new ValueNumbers(findings);
        SoleCause[] cases =
        [
            .. jobs.Where(job => job.Causes is [{ Chance: 1 } cause] && faults.Contains(cause.Fault) && job.Weight > 0)
                .OrderBy(job => job.Closed).ThenBy(job => job.Id, StringComparer.Ordinal)
                .Select(job => new SoleCause(faults.IndexOf(job.Causes[0].Fault), numbers.Of(job.Checked), job.Weight)),
        ];
        var links = new LinksOfCauses(learned, faults, findings, levels);
        double[] shares = [.. learned.Shares(faults, levels).Mean];
        Dependence strength = DependenceFit.Best(numbers, links, shares, cases);
        var counts = new JointCounts(faults.Length, numbers.Count, cases);
        return new(findings, numbers, new OneDependence(numbers, links.Chances, counts, strength.Kappa), shares, strength);
    }

    /// <summary>P(cause | these findings and exactly one cause), one per fault; what is not known counts nothing.</summary>
    public ImmutableArray<double> Posterior(IEnumerable<CheckedFinding> seen)
    {
        int[] values = numbers.Of(seen);
        return [.. Strength.Posterior(shares, likelihood.LogLikelihoods(values), values.Length)];
    }

    /// <summary>What each answer to one more finding would lead to: its chance, P(value | cause, what is known) averaged over causes, and the posterior then.</summary>
    public ImmutableArray<Foreseen> Ask(IEnumerable<CheckedFinding> seen, string finding)
    {
        int[] values = numbers.Of(seen);
        double[] before = likelihood.LogLikelihoods(values);
        double[] now = Strength.Posterior(shares, before, values.Length);
        return [.. findings.Single(f => f.Id == finding).Values.Select(value => Answer(value))];

        Foreseen Answer(string value)
        {
            double[] after = likelihood.LogLikelihoods([.. values, numbers.Of(finding, value)]);
            double chance = now.Select((p, c) => p * Math.Exp(after[c] - before[c])).Sum();
            return new(value, chance, [.. Strength.Posterior(shares, after, values.Length + 1)]);
        }
    }
}

/// <summary>One answer to a question.</summary>
/// <param name="Value">Value of the finding.</param>
/// <param name="Chance">P(value | what is known); all answers sum to about 1.</param>
/// <param name="Posterior">P(cause | what is known and this), one per fault.</param>
public sealed record Foreseen(string Value, double Chance, ImmutableArray<double> Posterior);
