using System.Collections.Immutable;

namespace Triage.Reasoning.Learning;

/// <summary>How often two values were seen together with a cause. Values of all findings are numbered through.</summary>
internal sealed class JointCounts
{
    readonly Dictionary<(string Finding, string Value), int> index = [];
    readonly int[] findingOf;
    readonly double[][,] pairs;
    readonly double[][,] known;
    readonly double[][] alone;
    readonly double[][] weight;

    internal JointCounts(Learned learned, ImmutableArray<string> faults, ImmutableArray<KnownFinding> findings, IEnumerable<JobRecord> jobs)
    {
        foreach (KnownFinding finding in findings)
            foreach (string value in finding.Values) index.Add((finding.Id, value), index.Count);
        findingOf = [.. findings.SelectMany((finding, f) => finding.Values.Select(_ => f))];
        Distribution[][] links = [.. faults.Select(fault => findings.Select(finding => learned.Seen(fault, finding.Id, []) ?? learned.Ambient(finding.Id)).ToArray())];
        alone = [.. links.Select(row => row.SelectMany(link => link.Mean).ToArray())];
        weight = [.. links.Select(row => row.SelectMany(link => link.Mean.Select(_ => link.Weight)).ToArray())];
        pairs = [.. faults.Select(_ => new double[index.Count, index.Count])];
        known = [.. faults.Select(_ => new double[index.Count, findings.Length])];
        foreach (JobRecord job in jobs) Add(faults.IndexOf(job.Causes[0].Fault), Values(job.Checked), job.Weight);
    }

    /// <summary>Numbers of the values that are known here, in order.</summary>
    internal int[] Values(IEnumerable<CheckedFinding> seen) =>
        [.. seen.Select(s => index.GetValueOrDefault((s.Finding, s.Value), -1)).Where(value => value >= 0).Order()];

    /// <summary>ln P(values | cause) of every cause; of one cause as if a job with these values and this weight had not been counted.</summary>
    internal double[] LogLikelihoods(int[] values, double kappa, int heldOut = -1, double heldWeight = 0) =>
        [.. pairs.Select((_, c) => values.Length == 0 ? 0 : LogLikelihood(c, values, kappa, c == heldOut ? heldWeight : 0))];

    double LogLikelihood(int cause, int[] values, double kappa, double held)
    {
        double[] own = [.. values.Select(value => Alone(cause, value, held))];
        var parents = new double[values.Length];
        for (int j = 0; j < values.Length; j++)
        {
            double product = Math.Log(own[j]);
            // logarithms of products of a few factors at a time: 1e-300 is far below what ten links reach
            double part = 1;
            for (int k = 0; k < values.Length; k++)
            {
                if (k == j) continue;
                part *= (Math.Max(0, pairs[cause][values[j], values[k]] - held) + kappa * own[k]) / (Math.Max(0, known[cause][values[j], findingOf[values[k]]] - held) + kappa);
                if (part > 1e-200) continue;
                product += Math.Log(part);
                part = 1;
            }
            parents[j] = product + Math.Log(part);
        }
        double most = parents.Max();
        return most + Math.Log(parents.Average(parent => Math.Exp(parent - most)));
    }

    /// <summary>P(value | cause), never 0: a value that no job and no note has is at most a millionth, not impossible.</summary>
    double Alone(int cause, int value, double held)
    {
        double w = weight[cause][value], p = alone[cause][value];
        return Math.Max(1e-6, held == 0 || double.IsInfinity(w) || w <= held ? p : (p * w - held) / (w - held));
    }

    void Add(int cause, int[] values, double amount)
    {
        foreach (int j in values)
            foreach (int k in values)
            {
                pairs[cause][j, k] += amount;
                known[cause][j, findingOf[k]] += amount;
            }
    }
}
