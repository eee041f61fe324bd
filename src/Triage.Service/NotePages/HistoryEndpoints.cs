using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Triage.Service.Http;
using Triage.Workshop;
using Triage.Workshop.Steps;

namespace Triage.Service.NotePages;

/// <summary>What a note said before: listed, shown, brought back, erased.</summary>
internal static class HistoryEndpoints
{
    public static void MapPast(this IEndpointRouteBuilder pages)
    {
        pages.MapGet("/notes/{id}/history", (string id, LiveBench bench) => Listed(id, bench, null));
        pages.MapPost("/notes/{id}/history", Erase);
        pages.MapGet("/notes/{id}/history/{version}", (string id, string version, LiveBench bench) => Shown(id, version, bench, null));
        pages.MapPost("/notes/{id}/history/{version}", BringBack);
    }

    private static async Task<IResult> Erase(string id, HttpContext http, LiveBench bench, IAntiforgery antiforgery)
    {
        var form = new Form(await Form.Fields(http));
        var refused = !await antiforgery.IsRequestValidAsync(http) ? FormRefusals.Old
            : form.YesNo("sure") != true ? FormRefusals.NotSure
            : bench.History.Erase(id);
        return refused is null ? PageResults.SeeOther(http, Addresses.History(id)) : Listed(id, bench, refused);
    }

    private static async Task<IResult> BringBack(string id, string version, HttpContext http, LiveBench bench, IAntiforgery antiforgery)
    {
        var form = new Form(await Form.Fields(http));
        var saved = await antiforgery.IsRequestValidAsync(http) ? bench.History.BringBack(id, version, form.Need("since")) : new(FormRefusals.Old, []);
        return saved.Written ? PageResults.SeeOther(http, Addresses.History(id)) : Shown(id, version, bench, saved);
    }

    private static IResult Listed(string id, LiveBench bench, Refusal? refused) => bench.History.Of(id) is { } past
        ? PageResults.Of<HistoryPage>(new() { ["Id"] = id, ["Past"] = past, ["Refused"] = refused }, refused is null ? StatusCodes.Status200OK : Problems.StatusOf(refused.Kind))
        : PageResults.Stop(NoSuch.Note(id, bench.Current));

    private static IResult Shown(string id, string version, LiveBench bench, NoteSaved? saved)
    {
        if (bench.History.Of(id) is not { } past)
            return PageResults.Stop(NoSuch.Note(id, bench.Current));
        return past.Find(version) is { } kept
            ? PageResults.Of<VersionPage>(
                new() { ["Id"] = id, ["Past"] = past, ["Version"] = kept, ["Saved"] = saved },
                saved is null ? StatusCodes.Status200OK : Problems.StatusOf(saved.Refused?.Kind ?? RefusalKind.NotUnderstood))
            : PageResults.Stop(NoSuch.Version(id, version));
    }
}
