using System.Collections.Immutable;
using FsCheck.Xunit;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Networks;
using Xunit;

namespace Triage.Reasoning.Tests.Inference;

[Trait("run", "long")]
public sealed class SingleFaultsTest
{
    [Property(MaxTest = 300, StartSize = 1000, EndSize = 1000000)]
    public void Each_fault_alone_weighs_what_summing_over_everything_gives_with_the_others_good(int seed)
    {
        var (network, evidence) = RandomCase.Of(seed);
        FaultyRoot[] candidates = [.. network.Roots.SelectMany((root, r) => Enumerable.Range(1, root.States.Length - 1).Select(s => new FaultyRoot(r, s)))];

        var alone = SingleFaults.Of(network, evidence, candidates);

        foreach (var (candidate, actual) in candidates.Zip(alone))
        {
            var expected = BruteForce.Of(Only(network, candidate), evidence);
            var prior = network.Roots.Select((root, r) => root.Prior[r == candidate.Root ? candidate.State : 0]).Aggregate(1.0, (a, b) => a * b);
            // the sum is of signed differences: what is small against 1 has lost digits to cancellation
            Assert.Equal(expected.Evidence, Math.Exp(actual.LogMass) / prior, 1e-9 * expected.Evidence + 1e-14);
            if (expected.Evidence > 1e-4)
                Assert.Equal(expected.Now[candidate.Root][candidate.State] / expected.Joint, actual.Remains, 1e-9);
        }
    }

    private static Network Only(Network network, FaultyRoot fault) => network with
    {
        SomethingIsWrong = false,
        Roots = [.. network.Roots.Select((root, r) => root with { Prior = Certain(root.Prior.Length, r == fault.Root ? fault.State : 0) })],
    };

    private static ImmutableArray<double> Certain(int states, int state) => [.. Enumerable.Range(0, states).Select(s => s == state ? 1.0 : 0)];
}
