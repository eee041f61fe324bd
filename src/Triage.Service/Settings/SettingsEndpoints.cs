using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Triage.Service.Http;
using Triage.Workshop;

namespace Triage.Service.Settings;

/// <summary>The bench's settings and instruments, changed on their page.</summary>
internal static class SettingsEndpoints
{
    public static void MapSettings(this IEndpointRouteBuilder pages)
    {
        pages.MapGet("/settings", () => PageResults.Of<SettingsPage>([]));
        pages.MapPost("/settings", SaveSettings);
        pages.MapPost("/settings/instruments", (HttpContext http, LiveBench bench, IAntiforgery forgery) => ListForm.Do<SettingsPage>(http, forgery, "/settings#instruments", form => Instrument(bench, form)));
    }

    private static async Task<IResult> SaveSettings(HttpContext http, LiveBench bench, IAntiforgery antiforgery)
    {
        var fields = await Form.Fields(http);
        var refused = await antiforgery.IsRequestValidAsync(http) ? Kept(bench, new(fields)) : FormRefusals.Old;
        return refused is null
            ? PageResults.SeeOther(http, "/settings")
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
                HandOverPrice = form.Number("hand-over-price", "price of handing over"),
                Currency = form.Text("currency"),
                Tools = [.. form.Lines("tools")],
            });
        }
        catch (NotUnderstoodException e)
        {
            return e.Refusal;
        }
    }

    private static Refusal? Instrument(LiveBench bench, Form form) => form.YesNo("remove") == true
        ? bench.Instruments.Remove(form.Need("version"), form.Need("was"))
        : bench.Instruments.Keep(form.Need("version"), form.Text("was"), new(form.Need("name"))
        {
            Kind = form.Text("kind"),
            Input = form.Text("input"),
            Burden = form.Text("burden"),
            Cannot = [.. form.Need("cannot").Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)],
            Ranges = [.. form.Lines("ranges")],
        });
}
