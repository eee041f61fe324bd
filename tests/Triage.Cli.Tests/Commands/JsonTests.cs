using System.Text.Json;

namespace Triage.Cli.Tests.Commands;

/// <summary>The names that programs may rely on.</summary>
public sealed class JsonTests : IDisposable
{
    private readonly TestBench bench = TestBench.Small();

    public void Dispose() => bench.Dispose();

    [Fact]
    public async Task Ask_says_job_recognition_answer_refused_remarks()
    {
        var page = await bench.Json("ask", "--machine", "Aldine C-1", "no chime, blank face");

        Has(page, "job", "recognition", "answer", "refused", "remarks");
        Has(page.GetProperty("recognition"), "findings", "notUnderstood", "tried", "notice");
        Has(page.GetProperty("recognition").All("findings")[0], "finding", "value", "words", "span", "confidence", "when", "hedged", "intermittent", "negated");
        Has(page.Answer(), "machine", "cautions", "stopAtOnce", "causes", "resets", "next", "evidence", "remarks", "leftOut");
        Has(page.Answer().All("causes")[0], "fault", "name", "probability", "lower", "upper", "why", "weights", "jobs", "isUnlisted");
        Has(page.Answer().All("resets")[0], "reset", "name", "cautions", "before", "steps", "erases", "blocked", "minutes", "chanceWorks", "chanceHolds", "tells");
        Has(page.Next(), "id", "kind", "name", "cautions", "steps", "opens", "tools", "price", "minutes", "expectedCost", "outcomes", "why", "others", "forbidden", "part");
    }

    [Fact]
    public async Task A_step_says_job_answer_remarks_and_each_entry_its_type()
    {
        var page = await bench.Json("part", "2026-001", "backup-cap", "tested-good", "--price", "1,25");

        Has(page, "job", "answer", "remarks");
        var entry = page.GetProperty("job").All("log")[^1];
        Assert.Equal(["part", "backup-cap", "tested-good"], [entry.Text("type"), entry.Text("part"), entry.Text("state")]);
        Assert.Equal(1.25, entry.Number("price"));
    }

    [Fact]
    public async Task Shelf_find_review_note_and_check_say_lists()
    {
        Has((await bench.Json("shelf")).All("jobs")[0], "id", "name", "machine", "waitsFor", "opened", "leading", "probability", "next", "nextKind");
        var found = await bench.Json("find", "silent");
        Has(found, "total", "hits", "counts", "notice");
        Has(found.All("hits")[0], "id", "kind", "title", "score", "passages", "matched", "outcome", "fix", "date");
        Has(await bench.Json("review"), "rows", "closedJobs", "onHearsay");
        Has(await bench.Json("review", "--forecasts"), "jobs", "scores", "reliability", "remarks");
        Has(await bench.Json("note", "chime"), "id", "kind", "name", "book", "file", "text");
        Has(await bench.Json("check"), "notes", "errors", "warnings", "hints", "problems");
    }

    [Fact]
    public async Task A_refusal_is_an_object_on_the_errors()
    {
        var said = await bench.Run("job", "2031-777", "--json");

        Assert.Equal((3, ""), (said.Code, said.Output));
        var refusal = JsonDocument.Parse(said.Errors).RootElement;
        Assert.Equal(["not-found", "There is no job “2031-777”."], [refusal.Text("kind"), refusal.Text("what")]);
    }

    private static void Has(JsonElement element, params string[] properties) =>
        Assert.Empty(properties.Except(element.EnumerateObject().Select(p => p.Name)));
}
