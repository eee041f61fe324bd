using Triage.Reasoning.Learning;
using Xunit;
using static Triage.Reasoning.Tests.Learning.SmallBench;

namespace Triage.Reasoning.Tests.Learning;

public class LinksTests
{
    [Fact]
    public void NominalLink_IsTheDirichletWorkedByHand()
    {
        Distribution code = Learn(Job("1", "regulator-short", ("code", "2"))).Link("regulator-short", "code", None)!;

        // note as 5 pseudo-jobs at the group, then κ = 8 for the fault
        double group = (1 + 5 * 0.1) / 6;
        Assert.Equal((1 + 8 * group) / 9, code.Mean[2], 12);
    }

    [Fact]
    public void OrderedLink_BeforeAnyJob_IsTheNotes()
    {
        Distribution sound = Learn().Link("regulator-short", "sound", OwnDevice)!;

        Assert.Equal([0.2, 0.3, 0.5], sound.Mean.Select(p => Math.Round(p, 12)));
    }

    [Fact]
    public void OrderedLink_TakesTheLeakOut()
    {
        Learned learned = Learn(Job("1", "fuse-open", ("lamp", "dark")));

        // alone with the leak: lit 0.1 · 0.9; group, then fault
        double group = 10 * 0.09 / 11;
        double lit = 8 * group / 9;
        Assert.Equal(lit / 0.9, learned.Link("fuse-open", "lamp", None)!.Mean[0], 12);
    }

    [Fact]
    public void NeitherNoteNorJob_IsNoLink()
    {
        Assert.Null(Learn(Job("1", "jack-loose", ("code", "1"))).Link("jack-loose", "lamp", None));
    }

    [Fact]
    public void ALinkThatOnlyJobsMade_LeansOnTheAmbient()
    {
        Learned learned = Learn(Job("1", "jack-loose", ("code", "1")));

        double ambient = (1 + 10 * 0.25) / 11;
        Assert.Equal(ambient, learned.Ambient("code").Mean[1], 12);
        Assert.Equal((1 + 4 * ambient) / 5, learned.Link("jack-loose", "code", None)!.Mean[1], 12);
    }

    [Fact]
    public void TheSamePartInAnotherRole_LendsItsLinks()
    {
        Learned learned = Learn(Job("1", "regulator-short", ("lamp", "dark")));

        Assert.True(learned.Link("second-regulator-short", "lamp", None)!.Mean[1] > 0.05);
        Assert.Null(Learn().Link("second-regulator-short", "lamp", None));
    }

    [Fact]
    public void Ambient_CountsOnlyJobsWithoutALinkedCause()
    {
        Learned learned = Learn(Job("1", "fuse-open", ("lamp", "dark")), Job("2", "regulator-short", ("lamp", "dark")));

        Assert.Equal((1 + 10 * 0.1) / 11, learned.Ambient("lamp").Mean[1], 12);
    }

    [Fact]
    public void ANewCause_SaysNothingOfTheAmbient()
    {
        JobRecord fresh = Job("1", "moth", ("lamp", "dark")) with { Causes = [new("moth", 1, true)] };

        Assert.Equal(Learn().Ambient("lamp").Mean, Learn(fresh).Ambient("lamp").Mean);
    }

    [Fact]
    public void WhatWasNotChecked_ChangesNoLink()
    {
        Learned before = Learn(Random(1, 30));
        Learned after = Enumerable.Range(0, 20).Aggregate(before, (learned, i) =>
            learned.With(Job($"silent-{i}", Notes.Faults[i % 4].Id)));

        Assert.Equal(LinksAt(before, OwnDevice), LinksAt(after, OwnDevice));
        Assert.NotEqual(before.Share("fuse-open", OwnDevice), after.Share("fuse-open", OwnDevice));
    }

    [Fact]
    public void TwoCauses_ShareAnAbnormalFindingByResponsibility()
    {
        // leak 0, A alone shows it with 0.9, B with 0.3: P(A's own | seen) = 0.9 / (1 − 0.1 · 0.7), B's 0.3 / 0.93
        Knowledge two = new()
        {
            Faults = [new("A", null, 1, 1) { Shows = [new("f", [0.1, 0.9], 10)] }, new("B", null, 1, 1) { Shows = [new("f", [0.7, 0.3], 10)] }],
            Findings = [new("f", ["no", "yes"], false, [1, 0], double.PositiveInfinity)],
        };
        JobRecord both = Job("1", "A", ("f", "yes")) with { Causes = [new("A"), new("B")] };

        Learned learned = Learner.Learn(two, [both], Fixed with { CreditRounds = 0 });

        Assert.Equal((0.9 / 0.93 + 9) / 11, learned.Link("A", "f", None)!.Mean[1], 9);
        Assert.Equal((0.3 / 0.93 + 3) / 11, learned.Link("B", "f", None)!.Mean[1], 9);
    }

    [Fact]
    public void TwoCauses_WithANormalFinding_BothShowNormal()
    {
        JobRecord both = Job("1", "fuse-open", ("lamp", "lit")) with { Causes = [new("fuse-open"), new("jack-loose")] };

        Assert.Equal(Learn(Job("1", "fuse-open", ("lamp", "lit"))).Link("fuse-open", "lamp", None)!.Mean, Learn(both).Link("fuse-open", "lamp", None)!.Mean);
    }

    [Fact]
    public void ACauseThatHidesAFinding_IsReportedAsBelowTheLeak()
    {
        JobRecord[] jobs =
        [
            .. Enumerable.Range(0, 60).Select(i => Job($"other-{i}", "jack-loose", ("sound", i % 2 == 0 ? "none" : "clear"))),
            .. Enumerable.Range(0, 60).Select(i => Job($"regulator-{i}", "regulator-short", ("sound", "clear")) with { Levels = [] }),
        ];

        Learned learned = Learn(jobs);

        // the same part in its other role shares the link, but one role alone does not make it sure there
        Assert.Equal([("regulator-short", "sound")], learned.BelowLeak(None).Select(below => (below.Fault, below.Finding)));
        // what is left of the note, which says 0.8 for not clear: six pseudo-jobs beside 60 · 9 / 68 of the group, then eight beside sixty
        Assert.Equal(1 - 6 / (6 + 60 * 9 / 68.0) * 8 / 68 * 0.8, learned.Link("regulator-short", "sound", None)!.Mean[0], 12);
    }

    [Fact]
    public void Screening_LearnedFromCounts_GivesThePublishedPosterior()
    {
        // Eddy 1982; 1 % / 80 % / 9.6 % as in Gigerenzer and Hoffrage 1995
        Knowledge blank = new()
        {
            Faults = [new("ill", null, 1, 0) { Shows = [new("test", [0.5, 0.5], 0)] }, new("well", null, 1, 0)],
            Findings = [new("test", ["negative", "positive"], false, [0.5, 0.5], 0)],
        };
        IEnumerable<JobRecord> Women(int count, string cause, string value) =>
            Enumerable.Range(0, count).Select(i => Job($"{cause}-{value}-{i}", cause, ("test", value)) with { Levels = [] });

        Learned learned = Learner.Learn(blank, [.. Women(8, "ill", "positive"), .. Women(2, "ill", "negative"),
            .. Women(95, "well", "positive"), .. Women(894, "well", "negative"),
            Job("part", "well", ("test", "positive")) with { Weight = 0.04, Levels = [] },
            Job("rest", "well", ("test", "negative")) with { Weight = 0.96, Levels = [] }], Fixed);

        double prior = learned.Share("ill", None).Mean;
        double leak = learned.Ambient("test").Mean[0];
        double positiveWhenIll = 1 - learned.Link("ill", "test", None)!.Mean[0] * leak;
        double posterior = prior * positiveWhenIll / (prior * positiveWhenIll + (1 - prior) * (1 - leak));
        Assert.Equal(0.07763975155279504, posterior, 1e-12);
    }
}
