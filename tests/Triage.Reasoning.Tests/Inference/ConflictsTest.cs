using FsCheck.Xunit;
using Triage.Reasoning.Inference;
using Xunit;

namespace Triage.Reasoning.Tests.Inference;

[Trait("run", "thorough")]
public sealed class ConflictsTest
{
    [Property(MaxTest = 400, StartSize = 1000, EndSize = 1000000)]
    public void Conflict_is_a_smallest_set_that_cannot_stand_together(int seed)
    {
        var (network, evidence) = RandomCase.Of(seed);
        var conflict = PosteriorInference.Of(network, evidence).Conflict;
        if (conflict.Length == 0)
        {
            return;
        }

        EvidenceItem[] items =
        [
            .. evidence.Observations.Select((_, i) => new EvidenceItem(EvidenceKind.Observation, i)),
            .. evidence.Likelihoods.Select((_, i) => new EvidenceItem(EvidenceKind.Likelihood, i)),
            .. evidence.Actions.Select((_, i) => new EvidenceItem(EvidenceKind.Outcome, i)),
            .. evidence.Actions.Select((_, i) => new EvidenceItem(EvidenceKind.Held, i)),
            new(EvidenceKind.SomethingIsWrong, 0),
        ];
        var sizes = Enumerable.Range(0, 1 << items.Length)
            .Where(mask => System.Numerics.BitOperations.PopCount((uint)mask) <= Math.Min(conflict.Length, 3))
            .Where(mask => BruteForce.Of(network, evidence, (kind, i) => (mask >> Array.IndexOf(items, new(kind, i)) & 1) == 1).Joint == 0)
            .Select(mask => System.Numerics.BitOperations.PopCount((uint)mask));
        Assert.Equal(0, BruteForce.Of(network, evidence, (kind, i) => conflict.Contains(new(kind, i))).Joint);
        Assert.Equal(conflict.Length, sizes.Append(conflict.Length).Min());
    }
}
