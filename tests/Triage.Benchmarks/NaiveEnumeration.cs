using Triage.Reasoning.Networks;

namespace Triage.Benchmarks;

/// <summary>The posterior of a network without actions and nominal findings, by summing over every combination of root states.</summary>
public static class NaiveEnumeration
{
    /// <summary>P(root in state, evidence), one row per root; not normalised.</summary>
    public static double[][] Of(Network network, Evidence evidence)
    {
        var joint = network.Roots.Select(r => new double[r.Prior.Length]).ToArray();
        var states = new int[network.Roots.Length];
        Choose(0, 1);
        return joint;

        void Choose(int root, double weight)
        {
            if (root < states.Length)
            {
                for (var s = 0; s < network.Roots[root].Prior.Length; s++)
                {
                    states[root] = s;
                    Choose(root + 1, weight * network.Roots[root].Prior[s]);
                }

                return;
            }

            if (network.SomethingIsWrong && Array.TrueForAll(states, s => s == 0))
            {
                return;
            }

            foreach (var seen in evidence.Observations)
            {
                weight *= AtMost(network.Findings[seen.Finding], seen.Value) - AtMost(network.Findings[seen.Finding], seen.Value - 1);
            }

            for (var r = 0; r < states.Length; r++)
            {
                joint[r][states[r]] += weight;
            }
        }

        double AtMost(Finding finding, int value)
        {
            var product = Sum(finding.Ambient, value);
            foreach (var link in finding.Links)
            {
                product *= states[link.Root] == link.State ? Sum(link.Produces, value) : 1;
            }

            return product;
        }

        static double Sum(System.Collections.Immutable.ImmutableArray<double> chances, int upTo)
        {
            var sum = 0.0;
            for (var v = 0; v <= upTo; v++)
            {
                sum += chances[v];
            }

            return sum;
        }
    }
}
