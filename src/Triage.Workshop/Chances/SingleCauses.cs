using System.Collections.Immutable;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Learning;
using Triage.Workshop.Model;

namespace Triage.Workshop.Chances;

/// <summary>
/// Which listed fault it is when exactly one is there and nothing else is wrong. Where past jobs show how findings come together, plain
/// findings weigh as <see cref="DependentFindings"/> say, tempered; measurements, resets, fixes and what is seen under conditions weigh as
/// in the network, whole. Otherwise everything weighs as in the network.
/// </summary>
internal sealed class SingleCauses
{
    private readonly DeviceNetwork network;
    private readonly ImmutableArray<(string Fault, FaultyRoot Place)> candidates;
    private readonly SingleFault[] alone;
    private readonly double[] chances;

    private SingleCauses(DeviceNetwork network, JobEvidence evidence, DependentFindings? dependent)
    {
        this.network = network;
        candidates = Candidates(network);
        FaultyRoot[] places = [.. candidates.Select(c => c.Place)];
        alone = SingleFaults.Of(network.Network, evidence.Evidence, places);
        Plain = dependent is null ? [] : PlainFindings.Of(network, evidence);
        Dependent = Plain.IsEmpty ? null : dependent;
        chances = Normalised(Dependent is null ? [.. alone.Select(a => a.LogMass)] : Logs(evidence, Dependent, places));
    }

    /// <summary>Null where everything weighs as in the network.</summary>
    public DependentFindings? Dependent { get; }

    /// <summary>What <see cref="Dependent"/> weighs.</summary>
    public ImmutableArray<CheckedFinding> Plain { get; }

    /// <summary>By fault id, summing to 1; empty when no single fault can have given the evidence.</summary>
    public ImmutableDictionary<string, double> Chances =>
        candidates.Zip(chances, (c, p) => KeyValuePair.Create(c.Fault, p)).ToImmutableDictionary(StringComparer.Ordinal);

    public static SingleCauses Of(DeviceNetwork network, JobEvidence evidence, Learned learned) =>
        new(network, evidence, network.Scope.Class.Exact ? null : learned.Dependent(network.Scope.Levels));

    /// <summary>
    /// What moves between single faults, by the law of total probability: the network says how likely it is that exactly one listed fault is
    /// there, the dependent findings say which. Sums to 0; empty where everything weighs as in the network.
    /// </summary>
    public ImmutableArray<MovedChance> Moves(Posterior posterior)
    {
        if (Dependent is null || posterior.Contradiction || chances.Length == 0)
            return [];
        var logEvidence = posterior.LogEvidenceAsConditioned + (network.Network.SomethingIsWrong ? Math.Log(posterior.PriorSomethingIsWrong) : 0);
        double[] before = [.. alone.Zip(candidates, (a, c) => Math.Min(Math.Exp(a.LogMass - logEvidence), posterior.Marginals[c.Place.Root][c.Place.State]))];
        var one = before.Sum();
        return [.. candidates.Select((c, i) => new MovedChance(c.Place, one * chances[i] - before[i], (one * chances[i] - before[i]) * alone[i].Remains))];
    }

    /// <summary>P(the evidence with something more | the evidence, and only this fault), one for each of the moves.</summary>
    public IEnumerable<double> ChancesOf(JobEvidence more) =>
        SingleFaults.Of(network.Network, more.Evidence, [.. candidates.Select(c => c.Place)])
            .Zip(alone, (then, now) => double.IsNegativeInfinity(now.LogMass) ? 0 : Math.Exp(then.LogMass - now.LogMass));

    private static ImmutableArray<(string, FaultyRoot)> Candidates(DeviceNetwork network) =>
    [
        .. network.Faults
            .Where(f => f.Key is not (SpecialFaults.Unlisted or SpecialFaults.NothingWrong))
            .OrderBy(f => f.Key, StringComparer.Ordinal)
            .SelectMany(f => f.Value.Where(p => network.FaultsIn(p.Root, p.State).Count() == 1).Take(1).Select(p => (f.Key, new FaultyRoot(p.Root, p.State)))),
    ];

    private double[] Logs(JobEvidence evidence, DependentFindings dependent, FaultyRoot[] places)
    {
        var temperature = dependent.Strength.Temperature(Plain.Length);
        var rest = SingleFaults.Of(network.Network, PlainFindings.Without(network, evidence), places);
        return [.. rest.Select((r, i) => double.IsNegativeInfinity(alone[i].LogMass) ? alone[i].LogMass : r.LogMass + dependent.LogLikelihood(candidates[i].Fault, Plain) / temperature)];
    }

    private static double[] Normalised(double[] logs)
    {
        var most = logs.DefaultIfEmpty(double.NegativeInfinity).Max();
        if (double.IsNegativeInfinity(most))
            return [];
        var sum = logs.Sum(l => Math.Exp(l - most));
        return Array.ConvertAll(logs, l => Math.Exp(l - most) / sum);
    }
}

/// <summary>What a single fault gains, or loses if negative: as the machine came in, and as far as it is still there.</summary>
internal readonly record struct MovedChance(FaultyRoot Place, double AtFirst, double Now);
