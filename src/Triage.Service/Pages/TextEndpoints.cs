using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Triage.Service.Endpoints;
using Triage.Service.Pages.Forms;
using Triage.Workshop;
using Triage.Workshop.Steps;

namespace Triage.Service.Pages;

/// <summary>Notes changed as text, and the bench's settings.</summary>
internal static class TextEndpoints
{
    public static void MapTexts(this IEndpointRouteBuilder pages)
    {
        pages.MapGet("/notes/{id}/text", (string id, LiveBench bench) => Shown(id, bench, null, null));
        pages.MapPost("/notes/{id}/text", SaveText);
        pages.MapGet("/settings", () => PageResults.Of<SettingsPage>([]));
        pages.MapPost("/settings", SaveSettings);
    }

    private static async Task<IResult> SaveText(string id, HttpContext http, LiveBench bench, IAntiforgery antiforgery)
    {
        var fields = await http.Request.ReadFormAsync(http.RequestAborted);
        var text = fields["text"].ToString();
        var saved = await antiforgery.IsRequestValidAsync(http)
            ? bench.Texts.Save(id, fields["version"].ToString(), text)
            : new NoteSaved(FormRefusals.Old, []);
        return saved.Written ? PageEndpoints.SeeOther(http, $"/notes/{Uri.EscapeDataString(id)}") : Shown(id, bench, text, saved);
    }

    private static IResult Shown(string id, LiveBench bench, string? typed, NoteSaved? saved) =>
        bench.Texts.Read(id) is not { } source
            ? PageResults.Stop(NoSuch.Note(id, bench.Current))
            : PageResults.Of<NoteEditPage>(
                new() { ["Id"] = id, ["Source"] = source, ["Typed"] = typed, ["Saved"] = saved },
                saved is null ? StatusCodes.Status200OK : Problems.StatusOf(saved.Refused?.Kind ?? RefusalKind.NotUnderstood));

    private static async Task<IResult> SaveSettings(HttpContext http, LiveBench bench, IAntiforgery antiforgery)
    {
        var fields = await http.Request.ReadFormAsync(http.RequestAborted);
        var refused = await antiforgery.IsRequestValidAsync(http) ? Kept(bench, new(fields)) : FormRefusals.Old;
        return refused is null
            ? PageEndpoints.SeeOther(http, "/settings")
            : PageResults.Of<SettingsPage>(new() { ["Refused"] = refused, ["Fields"] = fields.ToDictionary(f => f.Key, f => f.Value.ToString()) }, Problems.StatusOf(refused.Kind));
    }

    private static Refusal? Kept(LiveBench bench, Form form)
    {
        try
        {
            return bench.Setup.Save(form.Need("version"), new()
            {
                ValueOfHour = form.Number("value-of-hour", "value of an hour"),
                CostOfDay = form.Number("cost-of-day", "cost of a waiting day"),
                UsualWorth = form.Number("usual-worth", "usual worth"),
                Currency = form.Text("currency"),
                Tools = [.. form.Lines("tools")],
            });
        }
        catch (NotUnderstoodException e)
        {
            return e.Refusal;
        }
    }
}
