using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Triage.Service.Http;
using Triage.Workshop;
using Triage.Workshop.Steps;

namespace Triage.Service.NotePages;

/// <summary>Notes changed as text.</summary>
internal static class TextEndpoints
{
    public static void MapTexts(this IEndpointRouteBuilder pages)
    {
        pages.MapGet("/notes/{id}/text", (string id, LiveBench bench) => Shown(id, bench, null, null));
        pages.MapPost("/notes/{id}/text", SaveText);
    }

    private static async Task<IResult> SaveText(string id, HttpContext http, LiveBench bench, IAntiforgery antiforgery)
    {
        var fields = await Form.Fields(http);
        var text = fields["text"].ToString();
        var saved = await antiforgery.IsRequestValidAsync(http)
            ? bench.Texts.Save(id, fields["version"].ToString(), text)
            : new NoteSaved(FormRefusals.Old, []);
        return saved.Written ? PageResults.SeeOther(http, $"/notes/{Uri.EscapeDataString(id)}") : Shown(id, bench, text, saved);
    }

    private static IResult Shown(string id, LiveBench bench, string? typed, NoteSaved? saved) =>
        bench.Texts.Read(id) is not { } source
            ? PageResults.Stop(NoSuch.Note(id, bench.Current))
            : PageResults.Of<NoteEditPage>(
                new() { ["Id"] = id, ["Source"] = source, ["Typed"] = typed, ["Saved"] = saved },
                saved is null ? StatusCodes.Status200OK : Problems.StatusOf(saved.Refused?.Kind ?? RefusalKind.NotUnderstood));
}
