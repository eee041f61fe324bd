using System.Collections.Immutable;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Planning;

/// <summary>
/// P(value of a finding | the faults that remain). Ordered values: noisy-MAX, by the same shares that take evidence into a
/// network (<see cref="Share"/>), so that nothing is subtracted. Nominal ones: ambient, own, or the mean of the linked causes present.
/// </summary>
internal sealed class OutcomeLikelihood(Finding finding)
{
    private readonly ILookup<FaultyRoot, ImmutableArray<double>> _shows = finding.Links.ToLookup(l => new FaultyRoot(l.Root, l.State), l => l.Produces);

    /// <summary>P(value | set), a row for each value.</summary>
    /// <param name="setsWith">The sets that hold a fault.</param>
    /// <param name="faultsOf">The faults of a set.</param>
    public LikelihoodRow[] Over(ILookup<FaultyRoot, int> setsWith, Func<int, FaultyRoot[]> faultsOf)
    {
        int[] linked = [.. _shows.SelectMany(s => setsWith[s.Key]).Distinct().Order()];
        var own = finding.Nominal ? Means(linked, faultsOf) : Largest(linked, setsWith);
        return [.. own.Select((row, value) => new LikelihoodRow(finding.Ambient[value], linked, row))];
    }

    private IEnumerable<double[]> Means(int[] linked, Func<int, FaultyRoot[]> faultsOf)
    {
        ImmutableArray<double>[][] present = [.. linked.Select(set => faultsOf(set).SelectMany(f => _shows[f]).ToArray())];
        return finding.Ambient.Select((_, value) => Array.ConvertAll(present, shows => shows.Average(p => p[value])));
    }

    /// <summary>Every link multiplies into the sets that hold its fault.</summary>
    private IEnumerable<double[]> Largest(int[] linked, ILookup<FaultyRoot, int> setsWith)
    {
        int[][] places = [.. finding.Links.Select(l => setsWith[new(l.Root, l.State)].Select(set => Array.BinarySearch(linked, set)).ToArray())];
        for (var value = 0; value < finding.Ambient.Length; value++)
        {
            var shares = Enumerable.Repeat(Share.Of(finding.Ambient, value), linked.Length).ToArray();
            for (var link = 0; link < places.Length; link++)
            {
                var share = Share.Of(finding.Links[link].Produces, value);
                foreach (var place in places[link])
                {
                    var (atMost, q, p) = shares[place];
                    shares[place] = new(atMost * share.AtMost, q * share.Q, p + q * share.P);
                }
            }

            yield return Array.ConvertAll(shares, s => s.AtMost * s.P);
        }
    }
}
