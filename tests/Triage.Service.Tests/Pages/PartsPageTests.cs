using System.Net;
using Triage.Notes.Kinds;
using Triage.Workshop.Answers;
using Xunit;

namespace Triage.Service.Tests.Pages;

/// <summary>What a page of a job says of parts and of going on, and what it prints.</summary>
public sealed class PartsPageTests(SharedBench shared) : IClassFixture<SharedBench>, IDisposable
{
    private readonly ServedBench bench = shared.Bench;
    private readonly HttpClient browser = new() { BaseAddress = shared.Bench.Address };

    public void Dispose() => browser.Dispose();

    [Fact]
    public async Task What_may_not_change_is_said_before_anything_is_ordered()
    {
        var page = await Get("/jobs/2026-022/parts");
        Assert.Contains("Must match", page);
        Assert.True(page.IndexOf("id=\"needed\"", StringComparison.Ordinal) < page.IndexOf("id=\"parts\"", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Every_way_on_has_its_number_or_its_reason()
    {
        while (bench.Live.Current.AnswerFor(bench.Live.Current.Notes.Find<Job>("2026-022")!).Answer!.Next is { Kind: StepKind.Protect } first)
            Assert.Null(bench.Live.Steps.Secured("2026-022", first.Id, true).Refused);
        var page = await Get("/jobs/2026-022/parts");
        foreach (var way in new[] { "Mend", "Work around", "Part out", "Wait", "Hand over" })
            Assert.Matches($"<dt>{way}</dt>\\s*<dd>\\s*\\S", page);
        Assert.Matches("<dt>Part out</dt>\\s*<dd>\\d", page);
        Assert.Contains("at most 40", page);
    }

    [Fact]
    public async Task An_ordered_part_says_what_it_cost_and_how_long_it_takes() =>
        Assert.Contains("ordered, 3.4 ", await Get("/jobs/2026-022/parts"));

    [Fact]
    public async Task The_reading_of_a_part_is_drawn_against_its_ranges()
    {
        var job = bench.Live.Steps.TakeIn(new() { Machine = "Corvane K-61", Complaint = "no sound" }).Job!.Id;
        Assert.Null(bench.Live.Steps.Reading(job, new(default, "IC9 out to ground: 3.1 V") { From = "IC9 out", To = "ground", Mode = "dc-volts", Value = "3.1 V", Power = "full" }).Refused);
        var page = await Get($"/jobs/{job}/readings");
        Assert.Contains("aria-label=\"Reads 3.1 V; good 4.75 V to 5.25 V; ", page);
        Assert.Contains("class=\"needle\"", page);
    }

    [Theory]
    [InlineData("", "sheet reassembly label")]
    [InlineData("/label", "label")]
    [InlineData("/reassembly", "reassembly")]
    public async Task Each_paper_carries_the_code_of_the_job(string paper, string shown)
    {
        var page = await Get($"/jobs/2026-022/print{paper}");
        Assert.Equal(shown.Split(' '), new[] { "sheet", "reassembly", "label" }.Where(id => page.Contains($"class=\"paper{(id == "label" ? " label" : "")}\" id=\"{id}\"", StringComparison.Ordinal)));
        Assert.Equal(shown.Split(' ').Length, page.Split("Square code that opens job 2026-022").Length - 1);
    }

    [Fact]
    public async Task A_closed_job_still_has_its_label() => Assert.Contains("Square code", await Get("/jobs/2026-005/print/label"));

    private async Task<string> Get(string path) => WebUtility.HtmlDecode(await browser.GetStringAsync(path, TestContext.Current.CancellationToken));
}
