using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;
using Triage.Notes.Kinds;
using Triage.Service.Http;
using Triage.Service.Wire;
using Triage.Workshop;
using Triage.Workshop.Steps;

namespace Triage.Service.NotePages;

/// <summary>Drawings and photos of a device, by board revision.</summary>
internal static class DeviceDrawings
{
    private const string Pdf = "application/pdf", Any = "application/octet-stream";

    public static void MapDeviceDrawings(this IEndpointRouteBuilder api)
    {
        var drawings = api.MapGroup("/notes/{id}/drawings").WithTags("bench");
        drawings.MapGet("", List).WithSummary("Drawings and photos of a device; of one board revision, or all.").ProducesProblem(404);
        drawings.MapGet("/{number:int}", File).WithSummary("The file of one drawing.").Produces<byte[]>(200, Any, "image/jpeg", "image/png", "image/webp").ProducesProblem(404);
        drawings.MapPost("", Add).WithSummary("Put a drawing to a device: the body is the file.")
            .Accepts<byte[]>("image/jpeg", "image/png", "image/webp", Pdf).WithMetadata(new RequestSizeLimitAttribute(Limits.Drawing))
            .ProducesProblem(404).ProducesProblem(422).ProducesProblem(503);
    }

    private static Results<Tagged<WireDrawings>, ProblemHttpResult> List(string id, string? board, LiveBench bench) =>
        bench.Current.Notes.Find<Device>(id) is { } device ? new Tagged<WireDrawings>(WireDrawings.Of(device, board)) : Problems.Of(NoSuch.Device(id, bench.Current));

    private static IResult File(string id, int number, HttpContext http, LiveBench bench)
    {
        if (bench.Current.Notes.Find<Device>(id) is not { } device)
            return Problems.Of(NoSuch.Device(id, bench.Current));
        return bench.DrawingOf(device, number) is { } content ? DrawingFile.Inert(http, device.Drawings[number], content) : Problems.Of(NoSuch.Drawing(device));
    }

    private static async Task<Results<Tagged<WireDrawings>, ProblemHttpResult>> Add(string id, string? board, string? shows, HttpContext http, LiveBench bench)
    {
        using var file = await SentFile.Read(http, Limits.Drawing);
        return bench.Drawings.Add(id, file.Bytes, board, shows) is { } refused ? Problems.Of(refused) : List(id, null, bench);
    }
}
