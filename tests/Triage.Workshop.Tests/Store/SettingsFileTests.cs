using Triage.Notes.Kinds;
using Triage.Workshop.Knowledge;
using Xunit;

namespace Triage.Workshop.Tests.Store;

/// <summary>What a bench says of itself.</summary>
public sealed class SettingsFileTests(SharedDemo shared)
{
    private readonly DemoBench bench = shared.Bench;

    [Fact]
    public void DemoBench_HasEveryToolThatItsNotesName()
    {
        var settings = bench.Live.Current.Settings;
        var notes = bench.Live.Current.Notes;
        var efforts = notes.Of<Test>().Select(t => t.Effort).Concat(notes.Of<Reset>().Select(r => r.Effort)).Concat(notes.Of<Fault>().SelectMany(f => f.Mends).Select(m => m.Effort));

        Assert.Equal((14, 0.5, "kr", 80), (settings.ValueOfHour, settings.CostOfDay, settings.Currency, settings.UsualWorth));
        Assert.Empty(efforts.SelectMany(e => e.Tools).Except(settings.Tools!.Value));
    }

    [Fact]
    public async Task NoFile_UsualValues()
    {
        using var book = new SmallBook();
        await using var live = book.Open();

        Assert.Equal(new BenchSettings(), live.Current.Settings);
        Assert.Empty(live.Current.Problems);
    }

    [Theory]
    [InlineData("value-of-hour: -3\n", "bench.yaml:1:16: `value-of-hour` cannot be less than 0; it is -3. Write 0 or more.")]
    [InlineData("currency: kr\nusual-worth: much\n", "bench.yaml:2:14: `usual-worth` should be a number; it is `much`. Write a plain number such as 12 or 2.5.")]
    [InlineData("cost-of-days: 2\n", "bench.yaml:1:1: `cost-of-days` is not a field that is known here; it is kept. Did you mean cost-of-day?")]
    [InlineData("handling-minutes: -1\n", "bench.yaml:1:19: `handling-minutes` cannot be less than 0; it is -1. Write 0 or more.")]
    [InlineData("owner-call: 10\n", "bench.yaml:1:13: `owner-call` should be a group of fields. Write {field: value, field: value}.")]
    [InlineData("owner-call: {minutes: 5, day: 2}\n", "bench.yaml:1:26: `day` is not a field that is known here; it is kept. Did you mean days?")]
    [InlineData("- kr\n", "bench.yaml:1:1: The front matter is not a list of fields. Write one `field: value` a line.")]
    [InlineData("tools: [a, b\n", "bench.yaml:")]
    public async Task BadValues_AreNamed_AndTheUsualOnesCount(string text, string problem)
    {
        using var book = new SmallBook();
        book.Write("bench.yaml", text);
        await using var live = book.Open();

        Assert.StartsWith(problem, Assert.Single(live.Current.Problems).ToString(), StringComparison.Ordinal);
        Assert.Equal(new BenchSettings().Rates, live.Current.Settings.Rates);
    }

    [Fact]
    public async Task WhatHandlingAskingAndWaitingCost_IsTheBenchsToSay()
    {
        using var book = new SmallBook();
        book.Write("bench.yaml", "handling-minutes: 2\nowner-call: {minutes: 5}\nwaiting-hour: 0.5\n");
        await using var live = book.Open();
        var settings = live.Current.Settings;

        Assert.Equal((2, new OwnerCall(5, 1), 0.5), (settings.HandlingMinutes, settings.OwnerCall, settings.WaitingHour));
    }
}
