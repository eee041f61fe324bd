using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Triage.Service.Endpoints;
using Triage.Service.Pages.Forms;
using Triage.Workshop;
using Triage.Workshop.Stock;

namespace Triage.Service.Pages;

/// <summary>The lists of what the bench has: parts in the drawer, instruments.</summary>
internal static class DrawerEndpoints
{
    public static void MapDrawer(this IEndpointRouteBuilder pages)
    {
        pages.MapGet("/drawer", () => PageResults.Of<DrawerPage>([]));
        pages.MapPost("/drawer", (HttpContext http, LiveBench bench, IAntiforgery forgery) => Do<DrawerPage>(http, forgery, "/drawer", form => bench.Drawer.Add(ItemOf(form))));
        pages.MapPost("/drawer/change", (HttpContext http, LiveBench bench, IAntiforgery forgery) => Do<DrawerPage>(http, forgery, "/drawer", form => Change(bench, form)));
        pages.MapPost("/settings/instruments", (HttpContext http, LiveBench bench, IAntiforgery forgery) => Do<SettingsPage>(http, forgery, "/settings#instruments", form => Instrument(bench, form)));
    }

    private static async Task<IResult> Do<TPage>(HttpContext http, IAntiforgery antiforgery, string page, Func<Form, Refusal?> step)
        where TPage : Microsoft.AspNetCore.Components.IComponent
    {
        var fields = await http.Request.ReadFormAsync(http.RequestAborted);
        var form = new Form(fields);
        var refused = await antiforgery.IsRequestValidAsync(http) ? Tried(() => step(form)) : FormRefusals.Old;
        return refused is null
            ? PageEndpoints.SeeOther(http, form.Text("do") == "take" ? JobPages.Address(form.Need("job"), "parts") : page)
            : PageResults.Of<TPage>(new() { ["Refused"] = refused, ["Fields"] = fields.ToDictionary(f => f.Key, f => f.Value.ToString()) }, Problems.StatusOf(refused.Kind));
    }

    private static Refusal? Tried(Func<Refusal?> step)
    {
        try
        {
            return step();
        }
        catch (NotUnderstoodException e)
        {
            return e.Refusal;
        }
    }

    private static StockItem ItemOf(Form form) => new(form.Need("part"), Count(form))
    {
        Rating = form.Text("rating"),
        Where = form.Text("where"),
        Tested = form.YesNo("tested") == true,
    };

    private static int Count(Form form) => form.Index("count") is > 0 and var count
        ? count
        : throw new NotUnderstoodException($"“{form.Need("count")}” is no number of parts.", "Write a whole number, 1 or more.");

    private static Refusal? Change(LiveBench bench, Form form) => (form.Need("item"), form.Need("do")) switch
    {
        (var item, "take") => bench.Drawer.Take(form.Need("job"), item).Refused,
        (var item, "more") => bench.Drawer.Move(item, 1),
        (var item, "less") => bench.Drawer.Move(item, -1),
        (var item, "tested") => bench.Drawer.Test(item, true),
        (var item, "untested") => bench.Drawer.Test(item, false),
        (var item, "remove") => bench.Drawer.Remove(item),
        _ => throw new NotUnderstoodException("It was not said what to do with it.", "Press one of the buttons."),
    };

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
