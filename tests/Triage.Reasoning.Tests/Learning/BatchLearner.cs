using System.Collections.Immutable;
using Triage.Reasoning.Learning;

namespace Triage.Reasoning.Tests.Learning;

/// <summary>Learns from scratch at every question, straight from the definitions; one cause at a time, so no credit is shared.</summary>
sealed class BatchLearner(Knowledge notes, IReadOnlyList<JobRecord> jobs, Pooling pooling)
{
    public double Share(string fault, ImmutableArray<string> levels)
    {
        double all = notes.Faults.Sum(f => f.Share);
        double weight = Math.Min(notes.Faults.Sum(f => f.Share / all * f.ShareWeight), pooling.ShareNotes);
        double mean = Pooled(notes.Faults.Single(f => f.Id == fault).Share / all, weight, null, fault);
        for (int i = levels.Length - 1, depth = 0; i >= 0; i--, depth++)
            mean = Pooled(mean, pooling.ShareLevels[depth], levels[i], fault);
        return mean;
    }

    double Pooled(double mean, double kappa, string? level, string fault)
    {
        var causes = jobs.Where(job => level is null || job.Levels.Contains(level)).SelectMany(job => job.Causes.Select(cause => (job.Weight, Cause: cause)))
            .Where(item => notes.Faults.Any(f => f.Id == item.Cause.Fault)).ToArray();
        return (causes.Where(c => c.Cause.Fault == fault).Sum(c => c.Weight * c.Cause.Chance) + kappa * mean) / (causes.Sum(c => c.Weight * c.Cause.Chance) + kappa);
    }

    public double[]? Link(KnownFault fault, KnownFinding finding, ImmutableArray<string> levels)
    {
        KnownLink? note = fault.Shows.SingleOrDefault(link => link.Finding == finding.Id);
        double[] Seen(Func<string, bool> cause, string? level) => Count(finding, job => level is null || job.Levels.Contains(level),
            job => job.Causes.Where(c => cause(c.Fault)).Sum(c => c.Chance));
        bool InGroup(string id) => fault.Group is null ? id == fault.Id : notes.Faults.SingleOrDefault(f => f.Id == id)?.Group == fault.Group;
        double[] group = Seen(InGroup, null);
        if (note is null && group.Sum() == 0) return null;

        double[] ambient = Ambient(finding);
        double[] mean = note is null ? ambient : finding.Nominal ? [.. note.Produces] : Combine(note.Produces, ambient, (a, b) => a * b);
        mean = Mix(mean, note is null ? pooling.LinkUnnoted : Math.Min(note.Weight, pooling.LinkNotes), group);
        if (fault.Group is not null) mean = Mix(mean, pooling.LinkGroup, Seen(id => id == fault.Id, null));
        for (int i = levels.Length - 1, depth = 0; i >= 0; i--, depth++)
            mean = Mix(mean, pooling.LinkLevels[depth], Seen(id => id == fault.Id, levels[i]));
        return finding.Nominal ? mean : Monotone(Combine(mean, ambient, (a, b) => a / b));
    }

    double[] Ambient(KnownFinding finding)
    {
        bool Linked(string id) => notes.Faults.SingleOrDefault(f => f.Id == id) is not { } fault || fault.Shows.Any(link => link.Finding == finding.Id);
        double[] counts = Count(finding, job => !job.Causes.Any(c => c.WasNew || Linked(c.Fault)), _ => 1);
        return Mix([.. finding.Ambient], Math.Min(finding.AmbientWeight, pooling.Ambient), counts);
    }

    double[] Count(KnownFinding finding, Func<JobRecord, bool> counts, Func<JobRecord, double> chance) =>
        [.. finding.Values.Select(value => jobs.Where(counts).Where(job => job.Checked.Contains(new(finding.Id, value))).Sum(job => job.Weight * chance(job)))];

    static double[] Mix(double[] mean, double kappa, double[] counts) => [.. mean.Zip(counts, (m, n) => (n + kappa * m) / (counts.Sum() + kappa))];

    /// <summary>Differences of products or quotients of cumulatives.</summary>
    static double[] Combine(IReadOnlyList<double> a, double[] b, Func<double, double, double> with)
    {
        double[] c = [.. a.Select((_, x) => with(a.Take(x + 1).Sum(), b.Take(x + 1).Sum()))];
        return [.. c.Select((value, x) => x == 0 ? value : value - c[x - 1])];
    }

    /// <summary>Least-squares monotone cumulative of at most three values: two violators become their mean.</summary>
    static double[] Monotone(double[] differences)
    {
        double[] c = [.. differences.Select((_, x) => differences.Take(x + 1).Sum())];
        if (c.Length == 3 && c[0] > c[1]) c[0] = c[1] = (c[0] + c[1]) / 2;
        c = [.. c.SkipLast(1).Select(x => Math.Clamp(x, 0, 1)), 1];
        return [.. c.Select((value, x) => x == 0 ? value : value - c[x - 1])];
    }
}
