using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Triage.Service.Http;
using Triage.Service.Jobs;
using Triage.Workshop;
using Triage.Workshop.Steps;

namespace Triage.Service.Shelf;

/// <summary>A machine comes in: in one go from the complaint box, or with all that the owner says.</summary>
internal static class TakeInEndpoints
{
    public static void MapTakingIn(this IEndpointRouteBuilder pages)
    {
        pages.MapGet("/take-in", (HttpContext http) => Shown(http.Request.Query.ToDictionary(f => f.Key, f => f.Value.ToString()), null));
        pages.MapPost("/take-in", async (HttpRequest request) => Shown(Typed(await Form.Fields(request.HttpContext)), null));
        pages.MapPost("/jobs", TakeIn);
    }

    private static async Task<IResult> TakeIn(HttpContext http, StepRecorder recorder, IAntiforgery antiforgery)
    {
        var fields = await Form.Fields(http);
        var result = await antiforgery.IsRequestValidAsync(http)
            ? PageResults.Try(() => recorder.Record(http, "", "take-in", steps => steps.TakeIn(Request(new(fields)))))
            : new() { Refused = FormRefusals.Old };
        return result.Refused is { } refused ? Shown(Typed(fields), refused) : PageResults.SeeOther(http, Addresses.Job(result.Job!.Id));
    }

    private static TakeInRequest Request(Form form) => new()
    {
        Machine = form.Need("machine"),
        Complaint = form.Need("complaint"),
        Owner = form.Text("owner"),
        Serial = form.Text("serial"),
        History = [.. form.Lines("history")],
        Consent = new(form.Number("limit", "spending limit"), form.YesNo("may-erase"), form.YesNo("originals-back")),
        Worth = form.Number("worth", "worth"),
    };

    private static Dictionary<string, string> Typed(IFormCollection fields) => fields.ToDictionary(f => f.Key, f => f.Value.ToString());

    private static IResult Shown(Dictionary<string, string> typed, Refusal? refused) => PageResults.Of<TakeInPage>(
        new() { ["Fields"] = typed, ["Refused"] = refused },
        refused is null ? StatusCodes.Status200OK : Problems.StatusOf(refused.Kind));
}
