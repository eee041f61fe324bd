using System.Collections.Immutable;
using MathNet.Numerics.Distributions;
using Triage.Reasoning.Learning;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Tests.Simulation;

/// <summary>True numbers of a workshop, drawn from the very hierarchy that the learner believes in; deterministic by seed.</summary>
sealed class HiddenTruth
{
    public const double IndependentFaults = 0.1;

    /// <summary>Standard deviation of ln κ around what the learner takes for granted; it believes in more.</summary>
    const double Spread = 0.5;

    readonly Dictionary<string, double[]> shares = [];
    readonly Dictionary<(string Level, string Fault, string Finding), double[]> links = [];
    readonly Dictionary<string, double[]> ambients = [];
    readonly Random random;

    public HiddenTruth(int seed)
    {
        random = new(seed);
        Pooling medians = LearnerSettings.Default.Pooling;
        double[] shareKappas = [.. medians.ShareLevels.Select(Kappa)], linkKappas = [.. medians.LinkLevels.Select(Kappa)];
        double groupKappa = Kappa(medians.LinkGroup);
        double all = SixMachines.Notes.Faults.Sum(f => f.Share);
        shares[""] = Draw([.. SixMachines.Notes.Faults.Select(f => f.Share / all)], SixMachines.ShareWeight);
        foreach (KnownFinding finding in SixMachines.Notes.Findings) ambients[finding.Id] = Draw([.. finding.Ambient], finding.AmbientWeight);
        foreach (var group in SixMachines.Notes.Faults.GroupBy(fault => fault.Group))
            foreach (KnownLink link in group.First().Shows)
            {
                double[] ofGroup = Draw([.. link.Produces], link.Weight);
                foreach (KnownFault fault in group) links[("", fault.Id, link.Finding)] = Draw(ofGroup, groupKappa);
            }
        foreach (var device in SixMachines.Devices)
            for (int depth = 0; depth < device.Length; depth++)
                Below(device[^(depth + 1)], depth == 0 ? "" : device[^depth], shareKappas[depth], linkKappas[depth]);
    }

    public double Share(string fault, ImmutableArray<string> levels) =>
        shares[levels.FirstOrDefault("")][SixMachines.Notes.Faults.Select(f => f.Id).ToList().IndexOf(fault)];

    public double[] Link(string fault, string finding, ImmutableArray<string> levels) => links[(levels.FirstOrDefault(""), fault, finding)];

    public double[] Ambient(string finding) => ambients[finding];

    /// <summary>One root a fault, exactly as true on that device; with severity each is good, mild or severe.</summary>
    public Network NetworkOn(ImmutableArray<string> device, double severity)
    {
        var faults = SixMachines.Notes.Faults;
        return new(
            [.. faults.Select(f => Root(f.Id, IndependentFaults * Share(f.Id, device), severity))],
            [.. SixMachines.Notes.Findings.Select(finding => new Finding(finding.Id, finding.Values, [.. Ambient(finding.Id)],
            [
                .. from r in Enumerable.Range(0, faults.Length)
                   where faults[r].Shows.Any(link => link.Finding == finding.Id)
                   from state in severity > 0 ? (int[])[1, 2] : [1]
                   select new Link(r, state, [.. Moved(Link(faults[r].Id, finding.Id, device), state == 1 ? -severity : severity)]),
            ]))]);
    }

    /// <summary>Towards always abnormal for a positive part, towards always normal for a negative one, by the same amount.</summary>
    static double[] Moved(double[] produces, double part)
    {
        double abnormal = 1 - produces[0], moved = abnormal + part * Math.Min(abnormal, 1 - abnormal);
        return [1 - moved, .. produces.Skip(1).Select(p => abnormal > 0 ? p / abnormal * moved : 0)];
    }

    static Root Root(string fault, double prior, double severity) => severity == 0
        ? new(fault, [new("good", []), new("faulty", [fault])], [1 - prior, prior])
        : new(fault, [new("good", []), new("mild", [fault]), new("severe", [fault])], [1 - prior, prior / 2, prior / 2]);

    void Below(string level, string above, double shareKappa, double linkKappa)
    {
        if (!shares.TryAdd(level, [])) return;
        shares[level] = Draw(shares[above], shareKappa);
        foreach (var (key, value) in links.Where(link => link.Key.Level == above).ToArray())
            links[key with { Level = level }] = Draw(value, linkKappa);
    }

    double Kappa(double median) => median * Math.Exp(Spread * Normal.Sample(random, 0, 1));

    double[] Draw(double[] mean, double weight)
    {
        double[] gammas = [.. mean.Select(m => Math.Max(1e-12, Gamma.Sample(random, Math.Max(1e-3, m * weight), 1)))];
        return [.. gammas.Select(g => g / gammas.Sum())];
    }
}
