using System.Collections.Immutable;

namespace Triage.Reasoning.Learning;

/// <summary>
/// Ranks single causes when findings depend on each other beyond the cause: averaged one-dependence estimators (Webb,
/// Boughton and Wang 2005). P(x | c) is the mean over parents j of P(x_j | c) Π_k P(x_k | c, x_j), where P(x_k | c, x_j) leans
/// with κ pseudo-jobs on P(x_k | c); its logarithm is divided by 1 + (n / N)², n findings known, N the reach.
/// κ and N maximise the leave-one-out log score on the jobs learned from. For the bench's single-cause view only: this is
/// not one joint model, so it does not belong into look-ahead.
/// </summary>
public sealed class DependentFindings
{
    static readonly double[] Kappas = [0.5, 1, 2, 4];
    static readonly double[] Reaches = [double.PositiveInfinity, 70, 50, 35, 25, 18];

    readonly JointCounts counts;
    readonly double[] shares;

    DependentFindings(JointCounts counts, double[] shares, double kappa, double reach) =>
        (this.counts, this.shares, Kappa, Reach) = (counts, shares, kappa, reach);

    /// <summary>Pseudo-jobs by which a pair of findings leans on independence.</summary>
    public double Kappa { get; }

    /// <summary>Number of known findings at which evidence counts half; infinite when it is not tempered.</summary>
    public double Reach { get; }

    /// <summary>Learns pairs of findings from the jobs with one sure cause among those given; the rest comes from what is learned already.</summary>
    public static DependentFindings Learn(Learned learned, ImmutableArray<string> faults, ImmutableArray<KnownFinding> findings, IEnumerable<JobRecord> jobs)
    {
        var single = jobs.Where(job => job.Causes is [{ Chance: 1 } cause] && faults.Contains(cause.Fault) && job.Weight > 0)
            .OrderBy(job => job.Closed).ThenBy(job => job.Id, StringComparer.Ordinal).ToArray();
        var counts = new JointCounts(learned, faults, findings, single);
        double[] shares = [.. learned.Shares(faults, []).Mean];
        var best = (Score: double.NegativeInfinity, Model: new DependentFindings(counts, shares, Kappas[1], Reaches[0]));
        foreach (double kappa in Kappas)
        {
            var held = single.Select(job => HeldOut(counts, faults, job, kappa)).ToArray();
            foreach (double reach in Reaches)
            {
                var model = new DependentFindings(counts, shares, kappa, reach);
                double score = held.Sum(job => job.Weight * Math.Log(Math.Max(model.Tempered(job.Log, job.Known)[job.Cause], 1e-15)));
                if (score > best.Score) best = (score, model);
            }
        }
        return best.Model;
    }

    /// <summary>P(cause | these findings and exactly one cause), one per fault; what is not known counts nothing.</summary>
    public ImmutableArray<double> Posterior(IEnumerable<CheckedFinding> seen)
    {
        int[] values = counts.Values(seen);
        return [.. Tempered(counts.LogLikelihoods(values, Kappa), values.Length)];
    }

    static (double[] Log, int Known, int Cause, double Weight) HeldOut(JointCounts counts, ImmutableArray<string> faults, JobRecord job, double kappa)
    {
        int[] values = counts.Values(job.Checked);
        int cause = faults.IndexOf(job.Causes[0].Fault);
        return (counts.LogLikelihoods(values, kappa, cause, job.Weight), values.Length, cause, job.Weight);
    }

    double[] Tempered(double[] log, int known)
    {
        double temperature = 1 + Math.Pow(known / Reach, 2);
        double[] scores = [.. log.Select((l, c) => Math.Log(shares[c]) + l / temperature)];
        double most = scores.Max();
        double[] chances = [.. scores.Select(score => Math.Exp(score - most))];
        double sum = chances.Sum();
        return [.. chances.Select(chance => chance / sum)];
    }
}
