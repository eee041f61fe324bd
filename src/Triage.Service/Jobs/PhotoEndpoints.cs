using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Triage.Service.Http;
using Triage.Workshop;
using Triage.Workshop.Steps;

namespace Triage.Service.Jobs;

/// <summary>Photos of a job: only those that its log names, as what their content is, and never run.</summary>
internal static class PhotoEndpoints
{
    /// <summary>A photo, and room for the form around it.</summary>
    public const int MostBytes = Limits.Photo + 1_000_000;

    public static void MapPhotos(this IEndpointRouteBuilder pages) => pages.MapGet("/photos/{id}/{name}", Get);

    private static IResult Get(string id, string name, LiveBench bench, HttpContext http)
    {
        if (bench.Steps.PhotoOf(id, name) is not { } bytes || PhotoKind.Of(bytes) is not { } kind)
            return PageResults.Stop("There is no such photo.", "The job's log names the photos that it has.", StatusCodes.Status404NotFound);
        http.Response.Headers.ContentSecurityPolicy = "default-src 'none'; sandbox";
        http.Response.Headers.CacheControl = "private, max-age=31536000, immutable";
        return Results.Bytes(bytes, kind.MediaType);
    }
}
