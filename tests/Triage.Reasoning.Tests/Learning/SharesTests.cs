using Triage.Reasoning.Learning;
using Xunit;
using static Triage.Reasoning.Tests.Learning.SmallBench;

namespace Triage.Reasoning.Tests.Learning;

public class SharesTests
{
    [Fact]
    public void Share_BeforeAnyJob_IsTheNotes()
    {
        Assert.Equal(0.6, Learn().Share("fuse-open", OwnDevice).Mean, 12);
        Assert.Equal(4, Learn().Share("fuse-open", None).Weight, 12);
    }

    [Fact]
    public void Share_AfterOneJob_IsTheDirichletWorkedByHand()
    {
        Learned learned = Learn(Job("1", "regulator-short"));

        // note 1/5 as 4 pseudo-jobs, then κ = 8 at each level
        double all = (1 + 4 * 0.2) / (1 + 4);
        double keyboard = (1 + 8 * all) / (1 + 8);
        double device = (1 + 8 * keyboard) / (1 + 8);
        Assert.Equal(all, learned.Share("regulator-short", None).Mean, 12);
        Assert.Equal(device, learned.Share("regulator-short", OwnDevice).Mean, 12);
        Assert.Equal(keyboard, learned.Share("regulator-short", OtherDevice).Mean, 12);
    }

    [Fact]
    public void Share_OnAnotherDevice_RisesButLessThanOnItsOwn()
    {
        Learned before = Learn(), after = before.With(Job("1", "regulator-short"));

        double Rise(System.Collections.Immutable.ImmutableArray<string> levels) =>
            after.Share("regulator-short", levels).Mean - before.Share("regulator-short", levels).Mean;
        Assert.True(Rise(OwnDevice) > Rise(OtherDevice));
        Assert.True(Rise(OtherDevice) > 0);
        Assert.True(after.Share("fuse-open", OwnDevice).Mean < before.Share("fuse-open", OwnDevice).Mean);
    }

    [Fact]
    public void Shares_AmongTheFaultsThatApply_SumToOne()
    {
        var shares = Learn(Job("1", "regulator-short")).Shares(KnownScope.Of("half", ["fuse-open", "regulator-short"]), OwnDevice);

        Assert.Equal(1, shares.Values.Sum(share => share.Mean), 12);
    }

    [Fact]
    public void FourJobsOfAQuarter_CountAsOneJob()
    {
        JobRecord one = Job("1", "fuse-open", ("lamp", "dark"));
        JobRecord[] quarters = [.. Enumerable.Range(0, 4).Select(i => one with { Id = $"q{i}", Weight = 0.25 })];

        Assert.Equal(Learn(one).Everything(), Learn(quarters).Everything());
    }

    [Fact]
    public void AnUncertainCause_CountsByItsChance()
    {
        Learned learned = Learn(Job("1", "fuse-open") with { Causes = [new("fuse-open", 0.75), new("regulator-short", 0.25)] });

        Assert.Equal((0.25 + 4 * 0.2) / 5, learned.Share("regulator-short", None).Mean, 12);
    }

    [Fact]
    public void UnlistedShare_AfterOneNewCause_IsTheBetaWorkedByHand()
    {
        Learned learned = Learn(Job("1", "moth") with { Causes = [new("moth", 1, true)] });

        Assert.Equal(0.05, Learn().UnlistedShare(None).Mean, 12);
        Assert.Equal((1 + 1) / (1 + 20.0), learned.UnlistedShare(None).Mean, 12);
    }

    [Fact]
    public void IndependentFaults_AtFivePercentDoubles_IsAboutATenth()
    {
        double s = Learn().IndependentFaults;

        Assert.Equal(0.95, s / (Math.Exp(s) - 1), 12);
        Assert.Equal(0.1017, s, 4e-5);
    }

    [Fact]
    public void DamageThatFollowed_IsNoSecondCause()
    {
        KnownFault fuse = Notes.Faults[0], regulator = Notes.Faults[1] with { LeadsTo = [fuse.Id] };
        Knowledge tied = Notes with { Faults = [fuse, regulator, .. Notes.Faults[2..]] };
        JobRecord[] jobs = [.. Enumerable.Range(0, 20).Select(i => Job($"{i}", regulator.Id) with { Causes = [new(regulator.Id), new(fuse.Id)] })];
        JobRecord[] alone = [.. jobs.Select(job => job with { Causes = [new(regulator.Id)] })];

        Learned learned = Learner.Learn(tied, jobs, Fixed), expected = Learner.Learn(tied, alone, Fixed);

        Assert.Equal(expected.Share(fuse.Id, OwnDevice), learned.Share(fuse.Id, OwnDevice));
        Assert.Equal(expected.IndependentFaults, learned.IndependentFaults, 12);
        // without the tie they are two causes
        Assert.True(Learner.Learn(Notes, jobs, Fixed).IndependentFaults > 2 * learned.IndependentFaults);
    }

    [Fact]
    public void IndependentFaults_RiseWithJobsThatHadTwoCauses()
    {
        JobRecord both = Job("1", "fuse-open") with { Causes = [new("fuse-open"), new("regulator-short")] };

        double s = Learn(both).IndependentFaults;

        Assert.Equal(1 - 2 / 21.0, s / (Math.Exp(s) - 1), 12);
    }

    [Fact]
    public void AnUnknownFault_IsNamed()
    {
        var error = Assert.Throws<ArgumentException>(() => Learn().Share("moth", None));
        Assert.Contains("no fault 'moth'", error.Message, StringComparison.Ordinal);
    }
}
