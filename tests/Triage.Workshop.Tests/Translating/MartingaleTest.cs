using Triage.Notes.Kinds;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Networks;
using Triage.Workshop.Answers;
using Triage.Workshop.Chances;
using Triage.Workshop.Model;
using Xunit;

namespace Triage.Workshop.Tests.Translating;

/// <summary>A test of the whole chain from notes to posterior: what one expects to believe after looking is what one believes before.</summary>
public sealed class MartingaleTest
{
    [Fact]
    public Task For_every_test_offered_in_one_demo_job_of_thirty_the_expected_posterior_is_the_prior() => ExpectedPosteriorIsPrior(oneOf: 30);

    [Fact]
    [Trait("run", "thorough")]
    public Task For_every_test_offered_in_every_demo_job_the_expected_posterior_is_the_prior() => ExpectedPosteriorIsPrior(oneOf: 1);

    private static async Task ExpectedPosteriorIsPrior(int oneOf)
    {
        await using var bench = DemoBench.Open();
        var checkedTests = 0;
        foreach (var job in bench.Live.Current.Notes.Jobs.Where(j => j.Log.OfType<Saw>().Any()).OrderBy(j => j.Id, StringComparer.Ordinal).Where((_, i) => i % oneOf == 0))
        {
            var asItCameIn = job with { Log = [.. job.Log.TakeWhile(e => e is Saw)], Outcome = null };
            var answering = new Answering(bench.Live.Current.Knows);
            if (bench.Live.Current.Knows.ScopeOf(asItCameIn) is not { } scope)
                continue;
            var reasoned = answering.Reason(asItCameIn, scope, bench.Live.Current.Learned);
            Assert.False(reasoned.Posterior.Contradiction, job.Id);
            foreach (var test in scope.Tests)
            {
                var finding = test.Reveals ?? DeviceNetwork.Measurement(test.Id);
                if (!reasoned.Network.Findings.TryGetValue(finding, out var index) || reasoned.Evidence.Evidence.Observations.Any(o => o.Finding == index))
                    continue;
                ExpectedPosteriorIsPrior(reasoned, index, $"{job.Id}, {test.Id}");
                checkedTests++;
            }
        }

        Assert.True(checkedTests > 500 / oneOf);
    }

    private static void ExpectedPosteriorIsPrior(Reasoned reasoned, int finding, string where)
    {
        var network = reasoned.Network.Network;
        var evidence = reasoned.Evidence.Evidence;
        var expected = network.Roots.Select(r => new double[r.States.Length]).ToArray();
        // exact, or within what each answer says that it left out
        var (total, slack) = (0.0, 1e-9 + reasoned.Posterior.LeftOut);
        for (var value = 0; value < network.Findings[finding].Values.Length; value++)
        {
            var posterior = PosteriorInference.Of(network, evidence with { Observations = evidence.Observations.Add(new Observation(finding, value)) });
            if (posterior.Contradiction)
                continue;
            var chance = Math.Exp(posterior.LogEvidence - reasoned.Posterior.LogEvidence);
            var chanceAsFaulty = Math.Exp(posterior.LogEvidenceAsConditioned - reasoned.Posterior.LogEvidenceAsConditioned);
            total += chanceAsFaulty;
            slack += posterior.LeftOut;
            Assert.InRange(chance, 0, 1 + 1e-9);
            for (var r = 0; r < expected.Length; r++)
            {
                for (var s = 0; s < expected[r].Length; s++)
                    expected[r][s] += chanceAsFaulty * posterior.Marginals[r][s];
            }
        }

        Assert.InRange(slack, 0, 1e-3);
        Assert.True(Math.Abs(total - 1) < slack, $"{where}: the chances of the outcomes sum to {total}");
        for (var r = 0; r < expected.Length; r++)
        {
            for (var s = 0; s < expected[r].Length; s++)
                Assert.True(Math.Abs(expected[r][s] - reasoned.Posterior.Marginals[r][s]) < slack, $"{where}: {network.Roots[r].States[s].Id}");
        }
    }
}
