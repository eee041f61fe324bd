using System.Collections.Immutable;
using Triage.Reasoning.Learning;
using Xunit;

namespace Triage.Reasoning.Tests.Learning;

/// <summary>Causes count only against machines that could have had them: consoles with slots, keyboards with keys, jacks on both, lamps on neither.</summary>
public class ExposureTests
{
    static readonly KnownScope Console = KnownScope.Of("console", ["slot-dirty", "pad-worn", "jack-loose", "nothing"]);
    static readonly KnownScope Keyboard = KnownScope.Of("keyboard", ["key-dirty", "jack-loose", "nothing"]);
    static readonly KnownScope Lantern = KnownScope.Of("lantern", ["lamp-dead", "nothing"]);

    static readonly Knowledge Notes = new()
    {
        Faults =
        [
            new("slot-dirty", null, 0.3, 4), new("pad-worn", null, 0.1, 4), new("key-dirty", null, 0.15, 4), new("jack-loose", null, 0.1, 4), new("lamp-dead", null, 0.2, 4),
            new("nothing", null, 0.04, 2) { Apart = true },
        ],
        Findings = [],
        Scopes = [Console, Keyboard, Lantern],
    };

    [Fact]
    public void SharesOfAScope_BeforeAnyJob_AreTheNotes_AndSumToOne()
    {
        var shares = Learn().Shares(Console, ["console"]);

        Assert.Equal(0.04, shares["nothing"].Mean, 12);
        Assert.Equal(0.96 * 0.3 / 0.5, shares["slot-dirty"].Mean, 12);
        Assert.Equal(1, shares.Values.Sum(share => share.Mean), 12);
    }

    [Fact]
    public void JobsOnMachinesThatShareNoFault_MoveNothing()
    {
        var before = Learn().Shares(Console, ["console"]);
        var after = Learn(Jobs(50, "lantern", "lamp-dead")).Shares(Console, ["console"]);

        Assert.Equal(before["slot-dirty"].Mean / before["jack-loose"].Mean, after["slot-dirty"].Mean / after["jack-loose"].Mean, 12);
        Assert.Equal(before["slot-dirty"].Mean / before["pad-worn"].Mean, after["slot-dirty"].Mean / after["pad-worn"].Mean, 12);
    }

    [Fact]
    public void JobsOnMachinesWithoutItsOwnFaults_MoveThemOnlyThroughTheFaultsThatBothCanHave()
    {
        var before = Learn().Shares(Console, ["console"]);
        var fewer = Learn(Jobs(50, "keyboard", "key-dirty")).Shares(Console, ["console"]);
        var more = Learn(Jobs(50, "keyboard", "jack-loose")).Shares(Console, ["console"]);

        foreach (var after in (ImmutableDictionary<string, Estimate>[])[fewer, more])
            Assert.Equal(before["slot-dirty"].Mean / before["pad-worn"].Mean, after["slot-dirty"].Mean / after["pad-worn"].Mean, 12);
        Assert.True(fewer["jack-loose"].Mean < before["jack-loose"].Mean);
        Assert.True(fewer["slot-dirty"].Mean > before["slot-dirty"].Mean);
        Assert.True(more["jack-loose"].Mean > before["jack-loose"].Mean);
    }

    [Fact]
    public void OneJobOfAKeyboard_MovesTheRates_AsWorkedByHand()
    {
        Learned learned = Learner.Learn(Notes, [Job("1", "keyboard", "jack-loose") with { Levels = [] }], new() { PoolingSpread = 0 });

        // keys: β = 4 / 0.25; jacks: β = 4 / ((0.5 + 0.25) / 2); Λ solves Λ = Σ (β m + n) / (β + 1 / Λ)
        double sum = 0.25;
        for (int i = 0; i < 200; i++) sum = 16 * 0.15 / (16 + 1 / sum) + (4 / 0.375 * 0.1 + 1) / (4 / 0.375 + 1 / sum);
        double key = 16 * 0.15 / (16 + 1 / sum), jack = (4 / 0.375 * 0.1 + 1) / (4 / 0.375 + 1 / sum);
        var keyboard = learned.Shares(Keyboard, []);
        var console = learned.Shares(Console, []);
        Assert.Equal(jack / key, keyboard["jack-loose"].Mean / keyboard["key-dirty"].Mean, 10);
        Assert.Equal(jack / 0.3, console["jack-loose"].Mean / console["slot-dirty"].Mean, 10);
        Assert.Equal((4 / 0.375 + 1 / sum) * (jack + 0.4), console["jack-loose"].Weight, 9);
    }

    [Fact]
    public void ManyJobsOnHearsay_DoNotLowerTheirFault()
    {
        JobRecord[] hearsay = [.. Jobs(10, "console", "slot-dirty").Select(job => job with { Weight = 0.1 })];

        Assert.True(Learn(hearsay).Shares(Console, ["console"])["slot-dirty"].Mean > Learn().Shares(Console, ["console"])["slot-dirty"].Mean);
    }

    [Fact]
    public void WhatMostMachinesOfASortCannotHave_IsExpectedLessOften_AndToldOfLess()
    {
        KnownScope some = new("some", Console.Availability.SetItem("slot-dirty", 0.25));

        var shares = Learn().Shares(some, ["console"]);

        Assert.Equal(0.25 * 3, shares["slot-dirty"].Mean / shares["pad-worn"].Mean, 12);
    }

    [Fact]
    public void ACauseThatSuchMachinesAreNotKnownToHave_CountsAsUnlisted()
    {
        Learned learned = Learn(Jobs(10, "lantern", "slot-dirty"));

        Assert.True(learned.UnlistedShare(["lantern"]).Mean > 0.2);
        Assert.Equal(0.3 / 0.1, learned.Share("slot-dirty", []).Mean / learned.Share("jack-loose", []).Mean, 12);
    }

    [Fact]
    public void NothingWrong_IsAProportionOfItsOwn()
    {
        Learned learned = Learner.Learn(Notes, Jobs(10, "keyboard", "nothing"), new() { PoolingSpread = 0 });

        var before = Learn().Shares(Console, ["console"]);
        var after = learned.Shares(Console, ["console"]);
        Assert.True(after["nothing"].Mean > 2 * before["nothing"].Mean);
        Assert.Equal(before["slot-dirty"].Mean / before["jack-loose"].Mean, after["slot-dirty"].Mean / after["jack-loose"].Mean, 12);
        Assert.Equal(1, after.Values.Sum(share => share.Mean), 12);
    }

    [Fact]
    public void AScopeThatCannotBe_IsNamed()
    {
        void Refused(string message, KnownScope scope) =>
            Assert.Equal(message, Assert.Throws<ArgumentException>(() => Learner.Learn(Notes with { Scopes = [scope] }, [], LearnerSettings.Default)).Message);

        Refused("Scope 'attic' names the fault 'moth', which the notes do not list; add it to them first.", KnownScope.Of("attic", ["moth"]));
        Refused("Scope 'attic' can have the fault 'lamp-dead' with the chance 1.5; give one of 0 … 1.", new("attic", Lantern.Availability.SetItem("lamp-dead", 1.5)));
    }

    static Learned Learn(params IEnumerable<JobRecord> jobs) => Learner.Learn(Notes, jobs, LearnerSettings.Default);

    static IEnumerable<JobRecord> Jobs(int count, string sort, string cause) => Enumerable.Range(0, count).Select(i => Job($"{sort}-{cause}-{i}", sort, cause));

    static JobRecord Job(string id, string sort, string cause) =>
        new() { Id = id, Closed = DateTimeOffset.UnixEpoch, Levels = [sort], Scope = sort, Causes = [new(cause)], Weight = 1 };
}
