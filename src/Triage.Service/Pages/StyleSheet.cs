using Microsoft.AspNetCore.Http;
using Triage.Service.Endpoints;

namespace Triage.Service.Pages;

/// <summary>The one style sheet, carried inside the assembly.</summary>
internal static class StyleSheet
{
    private static readonly Lazy<byte[]> Content = new(Read);

    public static IResult Get(HttpContext http)
    {
        http.Response.Headers.CacheControl = "no-cache";
        return Results.File(Content.Value, "text/css; charset=utf-8", entityTag: new(EntityTag.Of(Content.Value)));
    }

    private static byte[] Read()
    {
        using var stream = typeof(StyleSheet).Assembly.GetManifestResourceStream("bench.css")!;
        using var copy = new MemoryStream();
        stream.CopyTo(copy);
        return copy.ToArray();
    }
}
