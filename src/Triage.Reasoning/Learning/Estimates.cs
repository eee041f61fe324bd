using System.Collections.Concurrent;
using System.Collections.Immutable;

namespace Triage.Reasoning.Learning;

/// <summary>Numbers derived from notes, counts and pooling. Levels run from the most special to the most general.</summary>
internal sealed class Estimates(KnowledgeIndex known, Tally tally, Pooling pooling, Comebacks comebacks, LearnerSettings settings)
{
    // the same links are asked for again and again while jobs are credited; what they are never changes
    readonly ConcurrentDictionary<string, Distribution> ambients = new();
    readonly ConcurrentDictionary<(string Fault, string Finding, string Levels), (Distribution? Seen, Distribution? Link)> links = new();

    internal KnowledgeIndex Known => known;

    internal Tally Tally => tally;

    internal Pooling Pooling => pooling;

    internal Comebacks Comebacks => comebacks;

    internal SharesOfCauses Shares { get; } = new(known, tally, pooling, settings);

    internal Distribution Ambient(string finding) => ambients.GetOrAdd(finding, AmbientOf);

    Distribution AmbientOf(string finding)
    {
        KnownFinding note = known.NeededFinding(finding);
        return new Distribution(note.Ambient, Capped(note.AmbientWeight, pooling.Ambient)).Updated(AmbientCounts(note));
    }

    internal double[] AmbientCounts(KnownFinding finding) =>
        [.. finding.Values.Select(value => tally[new(Sum.Ambient, TallyKey.Everywhere, finding.Id, Value: value)])];

    /// <summary>What the network stores: what the cause produces by itself (ordered), or the distribution itself (nominal).</summary>
    internal Distribution? Link(string fault, string finding, ImmutableArray<string> levels) => Both(fault, finding, levels).Link;

    /// <summary>P(value | only this cause), leak included; null when neither note nor job links the two.</summary>
    internal Distribution? Seen(string fault, string finding, ImmutableArray<string> levels) => Both(fault, finding, levels).Seen;

    (Distribution? Seen, Distribution? Link) Both(string fault, string finding, ImmutableArray<string> levels) =>
        links.GetOrAdd((fault, finding, string.Join('\n', levels)), _ =>
        {
            if (LinkChain(fault, finding, levels) is not { } chain) return (null, null);
            Distribution seen = chain.Last;
            return (seen, known.NeededFinding(finding).Nominal ? seen
                : NoisyMaxLink.Produced(seen, Ambient(finding), known.Link(fault, finding)?.Produces, chain.PriorPart));
        });

    internal Hierarchy? LinkChain(string fault, string finding, ImmutableArray<string> levels)
    {
        KnownFinding of = known.NeededFinding(finding);
        double[] Counts(string scope) => LinkCounts(of, fault, scope);
        Hierarchy chain = Hierarchy.Of(LinkPrior(fault, of), new(tally, Counts, pooling.LinkLevels), levels);
        if (known.Fault(fault)?.Group is { } group && !double.IsPositiveInfinity(chain.Prior.Weight))
            chain = chain with { First = OfGroup(group, of), Steps = [new(chain.First, pooling.LinkGroup), .. chain.Steps] };
        return known.Link(fault, finding) is not null || chain.First.Sum() > 0 ? chain : null;
    }

    double[] OfGroup(string group, KnownFinding finding)
    {
        var sum = new double[finding.Values.Length];
        foreach (KnownFault member in known.Group(group))
        {
            double[] says = LevelTree.Told(new LevelTree(tally, scope => LinkCounts(finding, member.Id, scope), pooling.LinkLevels).Effective(TallyKey.Everywhere, 0), pooling.LinkGroup);
            for (int v = 0; v < sum.Length; v++) sum[v] += says[v];
        }
        return sum;
    }

    internal Distribution LinkPrior(string fault, KnownFinding finding)
    {
        Distribution ambient = Ambient(finding.Id);
        if (known.Link(fault, finding.Id) is not { } note) return ambient with { Weight = pooling.LinkUnnoted };
        return new(
            finding.Nominal ? note.Produces : NoisyMaxLink.Seen(note.Produces, ambient),
            Capped(note.Weight, pooling.LinkNotes));
    }

    internal double[] LinkCounts(KnownFinding finding, string fault, string scope) =>
        [.. finding.Values.Select(value => tally[new(Sum.Link, scope, fault, finding.Id, value)])];

    /// <summary>How often the cause showed each value of the second finding beside the first's value, in jobs.</summary>
    internal double[] Beside(string fault, CheckedFinding parent, CheckedFinding child)
    {
        TallyKey key = PairCredits.Key(fault, parent, child);
        return [.. known.NeededFinding(child.Finding).Values.Select(value => tally[key with { Value = value }])];
    }

    internal Estimate? Works(string action, string fault) => Outcome(Sum.Works, action, fault, known.Clearing(action, fault)?.Works);

    internal Estimate? Holds(string action, string fault) => Outcome(Sum.Holds, action, fault, known.Clearing(action, fault)?.Holds);

    Estimate? Outcome(Sum sum, string action, string fault, Estimate? note) => note is not { } prior ? null : Distribution.Beta(prior).Updated(
    [
        tally[new(sum, TallyKey.Everywhere, action, fault, TallyKey.Yes)],
        tally[new(sum, TallyKey.Everywhere, action, fault, TallyKey.No)],
    ])[0];


    static double Capped(double weight, double most) => double.IsPositiveInfinity(weight) ? weight : Math.Min(weight, most);
}
