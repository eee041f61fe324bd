namespace Triage.Reasoning.Learning;

/// <summary>What a finding says of one cause of a job that may have had others.</summary>
internal static class FindingCredit
{
    /// <summary>
    /// Weight of each value that the cause alone would have shown, given the value that was seen. They sum to 1 for an ordered
    /// finding, to at most 1 for a nominal one, where another cause may have spoken instead.
    /// </summary>
    internal static double[] Alone(JobRecord job, int cause, KnownFinding finding, int value, Estimates believed)
    {
        var credit = new double[finding.Values.Length];
        if (!Credits.Together(job)) credit[value] = 1;
        else if (finding.Nominal) credit[value] = NominalShare(job, cause, finding, value, believed);
        else Ordered(job, cause, finding, value, believed, credit);
        return credit;
    }

    /// <summary>
    /// Noisy-MAX: what was seen is the largest of what the cause with the leak shows (Q) and what the others produce (O).
    /// P(own = seen) ∝ q(x) O(x); P(own = y below seen) ∝ q(y) (O(x) − O(x − 1)).
    /// </summary>
    static void Ordered(JobRecord job, int cause, KnownFinding finding, int value, Estimates believed, double[] credit)
    {
        Distribution own = believed.Seen(job.Causes[cause].Fault, finding.Id, job.Levels) ?? believed.Ambient(finding.Id);
        double upTo = Others(job, cause, finding, value, believed);
        double below = value == 0 ? 0 : Others(job, cause, finding, value - 1, believed);
        for (int y = 0; y < value; y++) credit[y] = own.Mean[y] * (upTo - below);
        credit[value] = own.Mean[value] * upTo;
        double sum = credit.Sum();
        if (sum > 0) for (int y = 0; y <= value; y++) credit[y] /= sum;
        else credit[value] = 1;
    }

    /// <summary>P(no other cause produces more than x).</summary>
    static double Others(JobRecord job, int cause, KnownFinding finding, int x, Estimates believed)
    {
        double product = 1;
        for (int j = 0; j < job.Causes.Length; j++)
        {
            if (j == cause || believed.Link(job.Causes[j].Fault, finding.Id, job.Levels) is not { } link) continue;
            double chance = job.Causes[j].Chance;
            product *= 1 - chance + chance * link.Cumulative()[x];
        }
        return product;
    }

    /// <summary>
    /// Several causes show the mean of their own distributions: one of them spoke. The chance that it was this one, given the
    /// value. A cause without a link is silent while another has one; when none has, each shares alike.
    /// </summary>
    static double NominalShare(JobRecord job, int cause, KnownFinding finding, int value, Estimates believed)
    {
        var own = job.Causes.Select(c => believed.Seen(c.Fault, finding.Id, job.Levels)?.Mean[value]).ToArray();
        if (own.All(chance => chance is null)) own = [.. own.Select(_ => (double?)1)];
        double others = own.Select((chance, j) => j == cause ? 0 : job.Causes[j].Chance * (chance ?? 0)).Sum();
        double mine = own[cause] ?? 0;
        return mine + others > 0 ? mine / (mine + others) : 1.0 / job.Causes.Length;
    }
}
