using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Triage.Service.Http;
using Triage.Service.Wire;
using Triage.Workshop;

namespace Triage.Service;

/// <summary>What the bench has, over JSON: parts in the drawer, instruments, settings. Each change answers with the list as it is then.</summary>
internal static class BenchEndpoints
{
    public static void MapBench(this IEndpointRouteBuilder api)
    {
        var drawer = api.MapGroup("/drawer").WithTags("bench");
        drawer.MapGet("", (LiveBench bench) => new Tagged<WireDrawer>(WireDrawer.Of(bench.Current))).WithSummary("Parts on hand.");
        Changes(drawer.MapPost("", (StockBody body, LiveBench bench) => Drawer(bench, bench.Drawer.Add(body.AsItem()))), "Put parts in; more of what lies there already are added to it.");
        Changes(drawer.MapPost("/counts", (StockMovedBody body, LiveBench bench) => Drawer(bench, bench.Drawer.Move(body.Item, body.By))), "Put some more of it in, or take some out.");
        Changes(drawer.MapPost("/tests", (StockTestedBody body, LiveBench bench) => Drawer(bench, bench.Drawer.Test(body.Item, body.Good))), "All of it were tested and found good, or not.");
        Changes(drawer.MapDelete("", (string item, LiveBench bench) => Drawer(bench, bench.Drawer.Remove(item))), "Take it off the list.");

        var instruments = api.MapGroup("/instruments").WithTags("bench");
        instruments.MapGet("", (LiveBench bench) => new Tagged<WireInstruments>(WireInstruments.Of(bench))).WithSummary("Meters and testers that were set up; none: an ordinary one is assumed.");
        Changes(instruments.MapPost("", (InstrumentBody body, LiveBench bench) => Instruments(bench, bench.Instruments.Keep(body.Version, body.Was, body.AsTyped()))), "Set an instrument up, or change one.");
        Changes(instruments.MapDelete("", (string name, string? version, LiveBench bench) => Instruments(bench, bench.Instruments.Remove(version, name))), "Take an instrument off the list.");

        api.MapGet("/settings", (LiveBench bench) => new Tagged<WireSettings>(WireSettings.Of(bench))).WithTags("bench").WithSummary("Value of an hour, cost of a waiting day, usual worth, currency, tools.");
        Changes(
            api.MapPatch("/settings", (SettingsBody body, LiveBench bench) => Answered(bench.Setup.Save(body.Version, body.AsChanged()), () => WireSettings.Of(bench))).WithTags("bench"),
            "Change settings; what is left out stays as it is.");
    }

    private static Results<Tagged<WireDrawer>, ProblemHttpResult> Drawer(LiveBench bench, Refusal? refused) => Answered(refused, () => WireDrawer.Of(bench.Current));

    private static Results<Tagged<WireInstruments>, ProblemHttpResult> Instruments(LiveBench bench, Refusal? refused) => Answered(refused, () => WireInstruments.Of(bench));

    private static Results<Tagged<T>, ProblemHttpResult> Answered<T>(Refusal? refused, Func<T> now) => refused is null ? new Tagged<T>(now()) : Problems.Of(refused);

    private static void Changes(RouteHandlerBuilder route, string summary) =>
        route.WithSummary(summary).ProducesProblem(404).ProducesProblem(409).ProducesProblem(422).ProducesProblem(503);
}
