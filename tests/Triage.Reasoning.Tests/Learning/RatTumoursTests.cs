using Triage.Reasoning.Learning;
using Xunit;

namespace Triage.Reasoning.Tests.Learning;

/// <summary>
/// Tumours in 71 groups of rats (Tarone 1982; Gelman et al., Bayesian Data Analysis, table 5.1; data and results from memory). There α and β have
/// their posterior mode near (2.4, 14.3), so a mean of 0.14 and α + β near 17; 4 of 14 shrinks to about 0.21.
/// </summary>
public class RatTumoursTests
{
    static readonly int[] Tumours =
    [
        0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 1, 1, 1, 1, 2, 2, 2, 2, 2, 2, 2, 2, 2, 1, 5, 2, 5, 3, 2, 7, 7, 3, 3, 2, 9, 10,
        4, 4, 4, 4, 4, 4, 4, 10, 4, 4, 4, 5, 11, 12, 5, 5, 6, 5, 6, 6, 6, 6, 16, 15, 15, 9, 4,
    ];

    static readonly int[] Rats =
    [
        20, 20, 20, 20, 20, 20, 20, 19, 19, 19, 19, 18, 18, 17, 20, 20, 20, 20, 19, 19, 18, 18, 25, 24, 23, 20, 20, 20, 20, 20, 20, 10, 49, 19, 46, 27, 17, 49, 47, 20, 20, 13, 48, 50,
        20, 20, 20, 20, 20, 20, 20, 48, 19, 19, 19, 22, 46, 49, 20, 20, 23, 19, 22, 20, 20, 20, 52, 46, 47, 24, 14,
    ];

    [Fact]
    public void SharesOfGroups_AreTheHierarchicalBetaBinomial()
    {
        Knowledge notes = new() { Faults = [new("tumour", null, 1, 1), new("none", null, 1, 1)], Findings = [] };
        LearnerSettings vague = new() { PoolingSpread = 3, Pooling = new() { ShareNotes = 1 } };

        Learned learned = Learner.Learn(notes, Jobs(), vague);

        double kappa = learned.Epoch.Pooling.ShareLevels[0];
        TestContext.Current.TestOutputHelper!.WriteLine($"mean {learned.Share("tumour", []).Mean:F4}, κ {kappa:F1}, last {learned.Share("tumour", ["group-70"]).Mean:F4}");
        Assert.Equal(71, Rats.Length);
        Assert.Equal(0.14, learned.Share("tumour", []).Mean, 0.01);
        Assert.InRange(kappa, 10, 25);
        Assert.Equal(0.21, learned.Share("tumour", ["group-70"]).Mean, 0.015);
        Assert.InRange(learned.Share("tumour", ["group-0"]).Mean, 0.04, 0.09);
    }

    static IEnumerable<JobRecord> Jobs() =>
        from g in Enumerable.Range(0, Rats.Length)
        from rat in Enumerable.Range(0, Rats[g])
        select new JobRecord
        {
            Id = $"{g}-{rat}",
            Closed = DateTimeOffset.UnixEpoch,
            Levels = [$"group-{g}"],
            Causes = [new(rat < Tumours[g] ? "tumour" : "none")],
            Weight = 1,
        };
}
