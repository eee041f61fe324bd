using System.Collections.Immutable;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Planning;

/// <summary>
/// P(value of a finding | the faults that remain). Ordered values: noisy-MAX, P(f ≤ x | s) = L(x) · Π C_r(x)
/// (Henrion 1989, Díez 1993). Nominal ones: ambient, own, or the mean of the linked causes present.
/// </summary>
internal sealed class OutcomeLikelihood
{
    private readonly Finding _finding;
    private readonly Dictionary<FaultyRoot, double[]> _shows;
    private readonly double[] _ambient;

    public OutcomeLikelihood(Finding finding)
    {
        _finding = finding;
        _ambient = Shape(finding.Ambient);
        _shows = finding.Links.ToDictionary(l => new FaultyRoot(l.Root, l.State), l => Shape(l.Produces));
    }

    public IEnumerable<FaultyRoot> Linked => _shows.Keys;

    /// <summary>One probability per value, summing to 1.</summary>
    public double[] Given(ReadOnlySpan<FaultyRoot> remaining) => _finding.Nominal ? Mean(remaining) : Max(remaining);

    private double[] Mean(ReadOnlySpan<FaultyRoot> remaining)
    {
        var sum = new double[_ambient.Length];
        var present = 0;
        foreach (var fault in remaining)
        {
            if (_shows.TryGetValue(fault, out var own))
            {
                present++;
                Add(sum, own);
            }
        }

        return present == 0 ? [.. _ambient] : Array.ConvertAll(sum, p => p / present);
    }

    private double[] Max(ReadOnlySpan<FaultyRoot> remaining)
    {
        double[] atMost = [.. _ambient];
        foreach (var fault in remaining)
        {
            if (_shows.TryGetValue(fault, out var own))
            {
                for (var x = 0; x < atMost.Length; x++)
                {
                    atMost[x] *= own[x];
                }
            }
        }

        for (var x = atMost.Length - 1; x > 0; x--)
        {
            atMost[x] = Math.Max(0, atMost[x] - atMost[x - 1]);
        }

        return atMost;
    }

    /// <summary>Cumulative for ordered values, with an exact 1 at the end; as it is for nominal ones.</summary>
    private double[] Shape(ImmutableArray<double> perValue)
    {
        double[] shape = [.. perValue];
        if (_finding.Nominal)
        {
            return shape;
        }

        for (var x = 1; x < shape.Length; x++)
        {
            shape[x] += shape[x - 1];
        }

        shape[^1] = 1;
        return shape;
    }

    private static void Add(double[] sum, double[] term)
    {
        for (var x = 0; x < sum.Length; x++)
        {
            sum[x] += term[x];
        }
    }
}
