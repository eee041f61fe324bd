using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Triage.Service.Http;
using Triage.Workshop;
using Triage.Workshop.Stock;

namespace Triage.Service.Stock;

/// <summary>Parts on hand: the list, and the forms on it.</summary>
internal static class DrawerEndpoints
{
    public static void MapDrawer(this IEndpointRouteBuilder pages)
    {
        pages.MapGet("/drawer", () => PageResults.Of<DrawerPage>([]));
        pages.MapPost("/drawer", (HttpContext http, LiveBench bench, IAntiforgery forgery) => ListForm.Do<DrawerPage>(http, forgery, "/drawer", form => bench.Drawer.Add(ItemOf(form))));
        pages.MapPost("/drawer/change", (HttpContext http, LiveBench bench, IAntiforgery forgery) => ListForm.Do<DrawerPage>(http, forgery, "/drawer", form => Change(bench, form)));
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
}
