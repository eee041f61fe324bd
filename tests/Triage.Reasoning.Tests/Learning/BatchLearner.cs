using System.Collections.Immutable;
using Triage.Reasoning.Learning;

namespace Triage.Reasoning.Tests.Learning;

/// <summary>Learns from scratch at every question, straight from the definitions; one cause at a time, so no credit is shared.</summary>
sealed class BatchLearner(Knowledge notes, IReadOnlyList<JobRecord> jobs, Pooling pooling)
{
    readonly KnownScope[] scopes = [KnownScope.Of("", notes.Faults.Select(f => f.Id)), .. notes.Scopes];

    public double Share(string fault, ImmutableArray<string> levels)
    {
        double[] rates = Rates(levels);
        return rates[notes.Faults.Select(f => f.Id).ToList().IndexOf(fault)] / rates.Sum();
    }

    /// <summary>Plain MM, as long as it takes.</summary>
    double[] Rates(ImmutableArray<string> levels)
    {
        string? level = levels.IsEmpty ? null : levels[0];
        double[] had = Told(level, Causes, pooling.ShareLevels, levels.Length), met = Told(level, Machines, pooling.ShareLevels, levels.Length);
        double[] mean = levels.IsEmpty ? [.. notes.Faults.Select(f => f.Share)] : Rates(levels[1..]);
        double[] lent = [.. notes.Faults.Select((_, f) => levels.IsEmpty ? LentByNotes(f) : Lent(f, mean, met, pooling.ShareLevels[levels.Length - 1]))];
        double[] rates = mean;
        for (int round = 0; round < 3000; round++)
        {
            double[] sums = [.. scopes.Select(scope => Sum(scope, rates))];
            rates = [.. notes.Faults.Select((fault, f) =>
            {
                double exposure = scopes.Select((scope, s) => met[s] > 0 ? met[s] * Has(scope, f) / sums[s] : 0).Sum();
                return lent[f] + exposure > 0 ? (lent[f] * mean[f] + had[f]) / (lent[f] + exposure) : mean[f];
            })];
        }
        return rates;
    }

    double LentByNotes(int fault)
    {
        double[] shares = [.. notes.Faults.Select(f => f.Share)];
        KnownScope[] noted = scopes.Length > 1 ? scopes[1..] : scopes;
        double holding = noted.Sum(scope => Has(scope, fault));
        double scale = noted.Sum(scope => Has(scope, fault) * Sum(scope, shares)) / holding;
        double weight = noted.Sum(scope => Has(scope, fault) * notes.Faults.Select((f, i) => Has(scope, i) * f.Share * f.ShareWeight).Sum() / Sum(scope, shares)) / holding;
        return Math.Min(weight, pooling.ShareNotes) / scale;
    }

    double Lent(int fault, double[] above, double[] met, double kappa)
    {
        double holding = scopes.Select((scope, s) => met[s] * Has(scope, fault)).Sum();
        return holding == 0 ? 0 : kappa / (scopes.Select((scope, s) => met[s] * Has(scope, fault) * Sum(scope, above)).Sum() / holding);
    }

    double Sum(KnownScope scope, double[] rates) => rates.Select((rate, f) => Has(scope, f) * rate).Sum();

    double Has(KnownScope scope, int fault) => scope.Availability.GetValueOrDefault(notes.Faults[fault].Id);

    double[] Causes(IEnumerable<JobRecord> among) => [.. notes.Faults.Select(f => among.Sum(job => Listed(job).Where(c => c.Fault == f.Id).Sum(c => job.Weight * c.Chance)))];

    double[] Machines(IEnumerable<JobRecord> among) => [.. scopes.Select(scope => among.Where(job => job.Scope == scope.Id).Sum(job => Listed(job).Sum(c => job.Weight * c.Chance)))];

    IEnumerable<JobCause> Listed(JobRecord job) => job.Causes.Where(c => scopes.Single(scope => scope.Id == job.Scope).Availability.ContainsKey(c.Fault));

    /// <summary>Jobs right at a level as they are; those of each member of it for n (κ + 1) / (n + κ), n above 1.</summary>
    double[] Told(string? level, Func<IEnumerable<JobRecord>, double[]> count, IReadOnlyList<double> kappas, int depth)
    {
        double[] sum = count(jobs.Where(job => level is null ? job.Levels.IsEmpty : job.Levels is [var first, ..] && first == level));
        var members = jobs.SelectMany(job => job.Levels.Select((member, i) => (Member: member, Above: i + 1 < job.Levels.Length ? job.Levels[i + 1] : null)))
            .Where(pair => pair.Above == level).Select(pair => pair.Member).Distinct();
        foreach (string member in members)
            sum = [.. sum.Zip(Less(Told(member, count, kappas, depth + 1), kappas[Math.Min(depth, kappas.Count - 1)]), (a, b) => a + b)];
        return sum;
    }

    static double[] Less(double[] counts, double kappa) =>
        [.. counts.Select(n => counts.Sum() <= 1 ? n : n * (kappa + 1) / (counts.Sum() + kappa))];

    public double[]? Link(KnownFault fault, KnownFinding finding, ImmutableArray<string> levels)
    {
        KnownLink? note = fault.Shows.SingleOrDefault(link => link.Finding == finding.Id);
        double[] Seen(string id, string? level, int depth) => Told(level, among => Count(finding, among, job => job.Causes.Where(c => c.Fault == id).Sum(c => c.Chance)), pooling.LinkLevels, depth);
        double[] group = fault.Group is null ? Seen(fault.Id, null, 0)
            : notes.Faults.Where(f => f.Group == fault.Group).Select(f => Less(Seen(f.Id, null, 0), pooling.LinkGroup)).Aggregate((a, b) => [.. a.Zip(b, (x, y) => x + y)]);
        if (note is null && group.Sum() == 0) return null;

        double[] ambient = Ambient(finding);
        double[] mean = note is null ? ambient : finding.Nominal ? [.. note.Produces] : Combine(note.Produces, ambient, (a, b) => a * b);
        mean = Mix(mean, note is null ? pooling.LinkUnnoted : Math.Min(note.Weight, pooling.LinkNotes), group);
        if (fault.Group is not null) mean = Mix(mean, pooling.LinkGroup, Seen(fault.Id, null, 0));
        for (int i = levels.Length - 1, depth = 0; i >= 0; i--, depth++)
            mean = Mix(mean, pooling.LinkLevels[depth], Seen(fault.Id, levels[i], depth + 1));
        double noteWeight = note is null ? pooling.LinkUnnoted : Math.Min(note.Weight, pooling.LinkNotes);
        double part = noteWeight / (noteWeight + group.Sum());
        if (fault.Group is not null) part *= pooling.LinkGroup / (pooling.LinkGroup + Seen(fault.Id, null, 0).Sum());
        for (int i = levels.Length - 1, depth = 0; i >= 0; i--, depth++)
            part *= pooling.LinkLevels[depth] / (pooling.LinkLevels[depth] + Seen(fault.Id, levels[i], depth + 1).Sum());
        return finding.Nominal ? mean : Monotone(Combine(mean, ambient, (a, b) => a / b), note?.Produces, part);
    }

    double[] Ambient(KnownFinding finding)
    {
        bool Linked(string id) => notes.Faults.SingleOrDefault(f => f.Id == id) is not { } fault || fault.Shows.Any(link => link.Finding == finding.Id);
        double[] counts = Count(finding, jobs.Where(job => !job.Causes.Any(c => c.WasNew || Linked(c.Fault))), _ => 1);
        return Mix([.. finding.Ambient], Math.Min(finding.AmbientWeight, pooling.Ambient), counts);
    }

    static double[] Count(KnownFinding finding, IEnumerable<JobRecord> among, Func<JobRecord, double> chance) =>
        [.. finding.Values.Select(value => among.Where(job => job.Checked.Contains(new(finding.Id, value))).Sum(job => job.Weight * chance(job)))];

    static double[] Mix(double[] mean, double kappa, double[] counts) => [.. mean.Zip(counts, (m, n) => (n + kappa * m) / (counts.Sum() + kappa))];

    /// <summary>Differences of products or quotients of cumulatives.</summary>
    static double[] Combine(IReadOnlyList<double> a, double[] b, Func<double, double, double> with)
    {
        double[] c = [.. a.Select((_, x) => with(a.Take(x + 1).Sum(), b.Take(x + 1).Sum()))];
        return [.. c.Select((value, x) => x == 0 ? value : value - c[x - 1])];
    }

    /// <summary>Least-squares monotone cumulative of at most three values: two violators become their mean. The note keeps its part of it.</summary>
    static double[] Monotone(double[] differences, IReadOnlyList<double>? note, double part)
    {
        double[] c = [.. differences.Select((_, x) => differences.Take(x + 1).Sum())];
        if (c.Length == 3 && c[0] > c[1]) c[0] = c[1] = (c[0] + c[1]) / 2;
        for (int x = 0; x < c.Length - 1; x++)
        {
            double below = note is null ? 0 : part * note.Take(x + 1).Sum(), above = note is null ? 0 : part * note.Skip(x + 1).Sum();
            c[x] = Math.Max(below, Math.Min(1 - above, c[x]));
        }
        c[^1] = 1;
        return [.. c.Select((value, x) => x == 0 ? value : value - c[x - 1])];
    }
}
