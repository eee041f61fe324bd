using Microsoft.AspNetCore.Http;
using Triage.Notes.Kinds;
using Triage.Workshop.Steps;

namespace Triage.Service.Http;

/// <summary>A drawing's file over HTTP: shown as what its content is, and never run.</summary>
internal static class DrawingFile
{
    public static IResult Inert(HttpContext http, Drawing drawing, byte[] content)
    {
        http.Response.Headers.ContentSecurityPolicy = "default-src 'none'; sandbox";
        http.Response.Headers.XContentTypeOptions = "nosniff";
        http.Response.Headers.CacheControl = "private, no-cache";
        return PhotoKind.Of(content) is { } kind
            ? Results.Bytes(content, kind.MediaType)
            : Results.Bytes(content, "application/octet-stream", drawing.File.Split('/', '\\')[^1]);
    }
}
