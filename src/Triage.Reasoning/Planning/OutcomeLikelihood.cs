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

    private readonly ILookup<FaultyRoot, Share[]> _shares = finding.Links.ToLookup(l => new FaultyRoot(l.Root, l.State), l => Shares(l.Produces));

    private readonly Share[] _leak = Shares(finding.Ambient);

    public IEnumerable<FaultyRoot> Linked => _shows.Select(s => s.Key);

    /// <summary>One probability per value, summing to 1.</summary>
    public double[] Given(ReadOnlySpan<FaultyRoot> remaining) => finding.Nominal ? Mean(remaining) : Max(remaining);

    private double[] Mean(ReadOnlySpan<FaultyRoot> remaining)
    {
        var sum = new double[_leak.Length];
        var present = 0;
        foreach (var fault in remaining)
        {
            foreach (var own in _shows[fault])
            {
                present++;
                for (var x = 0; x < sum.Length; x++)
                {
                    sum[x] += own[x];
                }
            }
        }

        return present == 0 ? [.. finding.Ambient] : Array.ConvertAll(sum, p => p / present);
    }

    private double[] Max(ReadOnlySpan<FaultyRoot> remaining)
    {
        var value = new double[_leak.Length];
        for (var x = 0; x < value.Length; x++)
        {
            var (atMost, q, p) = _leak[x];
            foreach (var fault in remaining)
            {
                foreach (var shares in _shares[fault])
                {
                    var share = shares[x];
                    (atMost, p, q) = (atMost * share.AtMost, p + q * share.P, q * share.Q);
                }
            }

            value[x] = atMost * p;
        }

        return value;
    }

    private static Share[] Shares(ImmutableArray<double> perValue) => [.. Enumerable.Range(0, perValue.Length).Select(x => Share.Of(perValue, x))];
}
