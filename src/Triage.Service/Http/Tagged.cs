using System.Reflection;
using System.Security.Cryptography;
using System.Text.Json;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Json;
using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;

namespace Triage.Service.Http;

/// <summary>A body with an entity tag of what it shows: unchanged for a reader who has it already.</summary>
internal sealed class Tagged<T>(T body, int status = StatusCodes.Status200OK, string? location = null) : IResult, IEndpointMetadataProvider
{
    /// <summary>Tag of something else than the whole body: a step answers with its job's.</summary>
    public Func<HttpContext, string>? Tag { get; init; }

    public static void PopulateMetadata(MethodInfo method, EndpointBuilder builder)
    {
        builder.Metadata.Add(new ProducesResponseTypeMetadata(StatusCodes.Status200OK, typeof(T), ["application/json"]));
        builder.Metadata.Add(new ProducesResponseTypeMetadata(StatusCodes.Status304NotModified, typeof(void)));
    }

    public async Task ExecuteAsync(HttpContext httpContext)
    {
        var bytes = Bytes(httpContext, body);
        var tag = Tag?.Invoke(httpContext) ?? EntityTag.Of(bytes);
        httpContext.Response.Headers.ETag = tag;
        httpContext.Response.Headers.CacheControl = "no-cache";
        if (HttpMethods.IsGet(httpContext.Request.Method) && EntityTag.Names(httpContext.Request.Headers.IfNoneMatch, tag))
        {
            httpContext.Response.StatusCode = StatusCodes.Status304NotModified;
            return;
        }

        if (location is not null)
            httpContext.Response.Headers.Location = location;
        httpContext.Response.StatusCode = status;
        httpContext.Response.ContentType = "application/json; charset=utf-8";
        await httpContext.Response.Body.WriteAsync(bytes, httpContext.RequestAborted);
    }

    public static byte[] Bytes(HttpContext http, T body) =>
        JsonSerializer.SerializeToUtf8Bytes(body, http.RequestServices.GetRequiredService<IOptions<JsonOptions>>().Value.SerializerOptions);
}

/// <summary>Strong entity tags (RFC 9110, 8.8.3).</summary>
internal static class EntityTag
{
    private const int Digits = 24;

    public static string Of(ReadOnlySpan<byte> content) => $"\"{Convert.ToHexStringLower(SHA256.HashData(content))[..Digits]}\"";

    /// <summary>Whether a precondition's list of tags holds this one.</summary>
    public static bool Names(IEnumerable<string?> header, string tag) =>
        header.SelectMany(h => (h ?? "").Split(',', StringSplitOptions.TrimEntries)).Any(t => t == tag || t == "*");
}
