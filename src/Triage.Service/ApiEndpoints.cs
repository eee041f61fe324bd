using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Triage.Notes;
using Triage.Notes.Kinds;
using Triage.Search.Queries;
using Triage.Service.Http;
using Triage.Service.Jobs;
using Triage.Service.Keeping;
using Triage.Service.NotePages;
using Triage.Service.Share;
using Triage.Service.Wire;
using Triage.Workshop;

namespace Triage.Service;

/// <summary>The JSON API.</summary>
internal static class ApiEndpoints
{
    private const int MostHits = 100;

    public static void MapApi(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/health", Health).WithTags("bench").WithSummary("Whether the bench is up, and what it holds.");
        var api = routes.MapGroup("/api").AddEndpointFilter(WholeBodies.Check);
        api.MapPost("/ask", Ask).WithTags("ask").WithSummary("The answer to a complaint; nothing is taken in.").ProducesProblem(404).ProducesProblem(422);
        api.MapGet("/find", Find).WithTags("find").WithSummary("Prior fixes and every other note, by words and filters.").ProducesProblem(400);
        api.MapGet("/notes/{id}", GetNote).WithTags("find").WithSummary("One note.").ProducesProblem(404);
        api.MapGet("/notes/{id}/text", GetText).WithTags("find").WithSummary("A note as it is written, with the version to give back on saving.").ProducesProblem(404);
        api.MapPut("/notes/{id}/text", PutText).WithTags("find").WithSummary("Save a note as text. One with an error, or made from an older state, is not written.")
            .ProducesProblem(403).ProducesProblem(404).ProducesProblem(409).ProducesProblem(422).ProducesProblem(503);
        api.MapGet("/review", (LiveBench bench, string? device) => new Tagged<WireReview>(WireReview.Of(bench.Current.Review(device))))
            .WithTags("review").WithSummary("Which fixes resolved which symptoms; of one device or class, or of all.");
        api.MapGet("/review/forecasts", async (LiveBench bench) => new Tagged<WireForecasts>(WireForecasts.Of(await bench.Current.ForecastsInBackground())))
            .WithTags("review").WithSummary("How good the forecasts of closed jobs were; takes seconds the first time.");
        api.MapGet("/check", (LiveBench bench) => new Tagged<WireProblem[]>([.. bench.Current.Problems.Select(WireProblem.Of)]))
            .WithTags("review").WithSummary("What is wrong with the notes, by file, line and column.");
        api.MapHistory();
        api.MapBench();
        api.MapDeviceDrawings();
        api.MapShare();
        api.MapBackup();
        api.MapJobs();
    }

    private static Tagged<WireHealth> Health(LiveBench bench)
    {
        var now = bench.Current;
        return new(new("up", now.Notes.All.Count(), now.Notes.Jobs.Count(), now.Problems.Count(p => p.Severity == Severity.Error))
        {
            Watching = bench.Watching,
            Mishaps = [.. now.Mishaps.Select(WireProblem.Of)],
        });
    }

    private static Results<Ok<WireAsking>, ProblemHttpResult> Ask(AskBody body, LiveBench bench)
    {
        var asking = bench.Steps.Ask(body.Machine ?? "", body.Complaint);
        return asking.Refused is { } refused ? Problems.Of(refused) : TypedResults.Ok(WireAsking.Of(asking));
    }

    private static Results<Tagged<WireFound>, ProblemHttpResult> Find(LiveBench bench, string? q, string[]? kind, string[]? device, string[]? finding, string[]? cause, string[]? outcome, string? like, SearchSort sort = SearchSort.Relevance, bool unfinished = false, int skip = 0, int take = 10) =>
        !Enum.IsDefined(sort) ? Problems.Of(StatusCodes.Status400BadRequest, "The request cannot be read.", "sort takes one of the words in /openapi/v1.json.", null)
        : new Tagged<WireFound>(WireFound.Of(bench.Current.Find(new(q ?? "")
        {
            Kinds = [.. kind ?? []],
            Devices = [.. device ?? []],
            Findings = [.. finding ?? []],
            Causes = [.. cause ?? []],
            Outcomes = [.. outcome ?? []],
            Like = like,
            Sort = sort,
            Unfinished = unfinished,
            Skip = Math.Max(0, skip),
            Take = Math.Clamp(take, 0, MostHits),
        })));

    private static Results<Ok<WireNoteText>, ProblemHttpResult> GetText(string id, LiveBench bench) =>
        bench.Texts.Read(id) is { } text ? TypedResults.Ok(new WireNoteText(text.Text, text.Version, text.Writable)) : Problems.Of(NoSuch.Note(id, bench.Current));

    private static Results<Ok<WireNoteSaved>, ProblemHttpResult> PutText(string id, NoteTextBody body, LiveBench bench)
    {
        var saved = bench.Texts.Save(id, body.Version, body.Text);
        return saved.Refused is { } refused ? Problems.Of(refused)
            : TypedResults.Ok(new WireNoteSaved(saved.Written, bench.Texts.Read(id)?.Version, [.. saved.Problems.Select(WireProblem.Of)]));
    }

    private static Results<Tagged<WireNote>, ProblemHttpResult> GetNote(string id, LiveBench bench) =>
        bench.Current.Notes.Find<Note>(id) is { } note ? new Tagged<WireNote>(WireNote.Of(note)) : Problems.Of(NoSuch.Note(id, bench.Current));
}
