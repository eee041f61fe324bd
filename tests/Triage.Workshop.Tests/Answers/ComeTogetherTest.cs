using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Reasoning.Networks;
using Triage.Tools.Soybean;
using Triage.Workshop.Answers;
using Triage.Workshop.Chances;
using Triage.Workshop.Model;
using Triage.Workshop.Tests.Importing;
using Xunit;

namespace Triage.Workshop.Tests.Answers;

/// <summary>Where past jobs show how findings come together (the soybean cases do), everything an answer rests on is moved alike.</summary>
public sealed class ComeTogetherTest
{
    private readonly SoybeanCases cases;
    private readonly Job job;
    private readonly Reasoned reasoned;

    public ComeTogetherTest(SharedSoybeans shared)
    {
        cases = shared.Cases;
        job = cases.Folds[0][1] with { Outcome = null, Log = [.. cases.Folds[0][1].Log.Take(8)] };
        reasoned = Reason(job);
    }

    [Fact]
    public void The_network_says_how_many_faults_and_the_jobs_say_which()
    {
        Assert.True(reasoned.IsMoved);
        Assert.Equal(8, reasoned.Single.Plain.Length);
        Assert.All(reasoned.Posterior.Marginals, row => Assert.Equal(1, row.Sum(), 1e-12));
        Assert.Equal(Listed(reasoned.ByNetwork.Marginals), Listed(reasoned.Posterior.Marginals), 1e-9);
        foreach (var special in (string[])[SpecialFaults.Unlisted, SpecialFaults.NothingWrong])
        {
            var (root, state) = reasoned.Network.Faults[special][0];
            Assert.Equal(reasoned.ByNetwork.Marginals[root][state], reasoned.AtFirst(special), 1e-12);
        }
    }

    [Fact]
    public void Ranking_hypotheses_and_the_single_cause_view_agree()
    {
        var hypotheses = reasoned.Hypotheses(2000, 1e-9);
        var answer = cases.Bench.AnswerFor(job).Answer!;

        Assert.Equal(1, hypotheses.Listed.Sum(h => h.Probability), 1e-6);
        foreach (var fault in cases.Causes)
        {
            var place = reasoned.Network.Faults[fault][0];
            Assert.Equal(reasoned.Now(fault), hypotheses.Listed.Where(h => h.Faulty.Any(f => f.Root == place.Root && f.State == place.State)).Sum(h => h.Probability), 1e-6);
            Assert.Equal(reasoned.Now(fault), answer.Cause(fault)!.Probability, 1e-12);
            Assert.InRange(answer.Cause(fault)!.Probability, answer.Cause(fault)!.Lower - 1e-12, answer.Cause(fault)!.Upper + 1e-12);
        }

        Assert.Equal(answer.ExactlyOne().MaxBy(c => c.Value).Key, answer.Causes.First(c => cases.Causes.Contains(c.Fault)).Fault);
    }

    /// <summary>By the definition of Good 1950, on the moved chances.</summary>
    [Fact]
    public void A_weight_of_evidence_is_the_odds_with_it_over_the_odds_without_it()
    {
        var cause = cases.Bench.AnswerFor(job).Answer!.Causes[0];
        var without = Reason(job with { Log = job.Log.RemoveAt(3) });
        var words = cases.Bench.InWords(job, job.Log[3]);

        var expected = 10 * Math.Log10(Odds(reasoned.AtFirst(cause.Fault)) / Odds(without.AtFirst(cause.Fault)));

        Assert.Equal(expected, Assert.Single(cause.Weights, w => w.Words == words).Decibans, 1e-6);
    }

    [Fact]
    public void A_measurement_counts_whole_whatever_is_known_beside_it()
    {
        var root = reasoned.Network.Faults[cases.Causes[0]][0].Root;
        var states = reasoned.Network.Network.Roots[root].States.Length;
        var measured = reasoned.With(With(new() { Likelihoods = [new(root, [1, .. Enumerable.Repeat(4.0, states - 1)])] }));

        ChangedBy(4, measured);
    }

    [Fact]
    public void A_repair_that_changed_nothing_counts_whole_whatever_is_known_beside_it()
    {
        var (root, state) = reasoned.Network.Faults[cases.Causes[0]][0];
        var failed = reasoned.With(With(new() { Actions = [new("mend", [new Clearing(root, state, 0.75)], ActionOutcome.StillFaulty)] }));

        ChangedBy(0.25, failed);
    }

    /// <summary>One cause is mended for good half of the time, everything else only until power is lost.</summary>
    [Fact]
    public void Whether_it_holds_is_as_likely_as_the_moved_chances_of_what_was_mended()
    {
        ImmutableArray<Clearing> clears = [.. reasoned.Network.Network.Roots.SelectMany((root, r) => Enumerable.Range(1, root.States.Length - 1).Select(s => new Clearing(r, s, 1, Holds(r, s))))];
        JobEvidence Mended(bool? held) => With(new() { Actions = [new("mend", clears, ActionOutcome.Works) { Held = held }] });
        var mended = reasoned.With(Mended(null));

        Assert.Equal(1, mended.ChanceOf(Mended(true)) + mended.ChanceOf(Mended(false)), 1e-9);
        Assert.Equal(0.5 * mended.AtFirst(cases.Causes[0]), mended.ChanceOf(Mended(true)), 1e-3);

        double Holds(int r, int s) => (r, s) == reasoned.Network.Faults[cases.Causes[0]][0] ? 0.5 : 0;
    }

    private void ChangedBy(double ratio, Reasoned after)
    {
        var (before, now) = (reasoned.Single.Chances, after.Single.Chances);
        var (first, other) = (cases.Causes[0], cases.Causes[5]);
        Assert.Equal(ratio, now[first] / now[other] / (before[first] / before[other]), 1e-9);
    }

    private JobEvidence With(Evidence more) => reasoned.Evidence with
    {
        Evidence = more with { Observations = reasoned.Evidence.Evidence.Observations },
        MeasuredIn = [.. more.Likelihoods.Select(_ => job.Log[0])],
        ActedIn = [.. more.Actions.Select(_ => job.Log[0])],
    };

    private Reasoned Reason(Job of)
    {
        var answering = new Answering(cases.Bench.Knows);
        return answering.Reason(of, cases.Bench.Knows.ScopeOf(of)!, cases.Bench.Learned);
    }

    private double Listed(ImmutableArray<ImmutableArray<double>> marginals) =>
        cases.Causes.SelectMany(c => reasoned.Network.Faults[c]).Sum(p => marginals[p.Root][p.State]);

    private static double Odds(double p) => p / (1 - p);
}
