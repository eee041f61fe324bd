using Microsoft.AspNetCore.Http;

namespace Triage.Service.Http;

/// <summary>A file carried inside the assembly: the one style sheet, the one script.</summary>
internal sealed class CarriedFile(string name, string mediaType)
{
    private readonly Lazy<byte[]> content = new(() => Read(name));

    public static CarriedFile Style { get; } = new("bench.css", "text/css; charset=utf-8");

    public static CarriedFile Script { get; } = new("bench.js", "text/javascript; charset=utf-8");

    public IResult Get(HttpContext http)
    {
        http.Response.Headers.CacheControl = "no-cache";
        return Results.File(content.Value, mediaType, entityTag: new(EntityTag.Of(content.Value)));
    }

    private static byte[] Read(string name)
    {
        using var stream = typeof(CarriedFile).Assembly.GetManifestResourceStream(name)!;
        using var copy = new MemoryStream();
        stream.CopyTo(copy);
        return copy.ToArray();
    }
}
