using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Triage.Notes.Kinds;
using Triage.Service.Http;
using Triage.Workshop;

namespace Triage.Service.NotePages;

/// <summary>Drawings of a device and the pages of its designators. A drawing's file is shown as what its content is, and never run.</summary>
internal static class DrawingEndpoints
{
    public static void MapDrawings(this IEndpointRouteBuilder pages)
    {
        pages.MapGet("/notes/{id}/drawings", (string id, string? board, LiveBench bench) => Shown(id, board, null, bench));
        pages.MapGet("/notes/{id}/drawings/{number:int}", Get);
        pages.MapGet("/notes/{id}/parts/{designator}", (string id, string designator, LiveBench bench) => Shown(id, null, designator, bench));
    }

    private static IResult Shown(string id, string? board, string? designator, LiveBench bench)
    {
        var now = bench.Current;
        return now.Notes.Find<Device>(id) is { } device
            ? PageResults.Of<DrawingsPage>(new() { ["Now"] = now, ["Device"] = device, ["Board"] = board, ["Designator"] = designator })
            : PageResults.Stop(NoSuch.Note(id, now));
    }

    private static IResult Get(string id, int number, LiveBench bench, HttpContext http)
    {
        if (bench.Current.Notes.Find<Device>(id) is not { } device)
            return PageResults.Stop(NoSuch.Note(id, bench.Current));
        return bench.DrawingOf(device, number) is { } content ? DrawingFile.Inert(http, device.Drawings[number], content) : PageResults.Stop(NoSuch.Drawing(device));
    }
}
