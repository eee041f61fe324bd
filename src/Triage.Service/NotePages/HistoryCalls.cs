using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Triage.Service.Http;
using Triage.Service.Wire;
using Triage.Workshop;

namespace Triage.Service.NotePages;

/// <summary>What notes said before, over JSON.</summary>
internal static class HistoryCalls
{
    public static void MapHistory(this IEndpointRouteBuilder api)
    {
        var history = api.MapGroup("/notes/{id}/history").WithTags("find");
        history.MapGet("", List).WithSummary("What steps and saves replaced in a note, the newest first; bench.yaml for the settings.").ProducesProblem(404);
        history.MapGet("/{version}", Get).WithSummary("A note as it was.").ProducesProblem(404);
        history.MapPost("/{version}", BringBack).WithSummary("Bring a version back. One with an error, or over a text that you did not see, is not written.")
            .ProducesProblem(404).ProducesProblem(409).ProducesProblem(422).ProducesProblem(503);
        history.MapDelete("", Erase).WithSummary("Forget what a note said before, as when its owner asks.").ProducesProblem(404).ProducesProblem(503);
    }

    private static Results<Tagged<WirePast>, ProblemHttpResult> List(string id, LiveBench bench) =>
        bench.History.Of(id) is { } past ? new Tagged<WirePast>(WirePast.Of(past)) : Problems.Of(NoSuch.Note(id, bench.Current));

    private static Results<Ok<WireNoteText>, ProblemHttpResult> Get(string id, string version, LiveBench bench) =>
        bench.History.Of(id) is not { } past ? Problems.Of(NoSuch.Note(id, bench.Current))
        : past.Find(version) is { } kept ? TypedResults.Ok(new WireNoteText(kept.Text, kept.Version, past.Writable))
        : Problems.Of(NoSuch.Version(id, version));

    private static Results<Ok<WireNoteSaved>, ProblemHttpResult> BringBack(string id, string version, BringBackBody body, LiveBench bench)
    {
        var saved = bench.History.BringBack(id, version, body.Version);
        return saved.Refused is { } refused ? Problems.Of(refused)
            : TypedResults.Ok(new WireNoteSaved(saved.Written, bench.History.Of(id)?.Now, [.. saved.Problems.Select(WireProblem.Of)]));
    }

    private static Results<NoContent, ProblemHttpResult> Erase(string id, LiveBench bench) =>
        bench.History.Erase(id) is { } refused ? Problems.Of(refused) : TypedResults.NoContent();
}
