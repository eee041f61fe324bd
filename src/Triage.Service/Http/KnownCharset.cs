using Microsoft.AspNetCore.Http;
using Microsoft.Net.Http.Headers;

namespace Triage.Service.Http;

/// <summary>A body in a character encoding that nobody knows cannot be read.</summary>
internal static class KnownCharset
{
    public static Task Check(HttpContext http, RequestDelegate next) =>
        MediaTypeHeaderValue.TryParse(http.Request.ContentType, out var type) && type.Charset.HasValue && type.Encoding is null
            ? throw new BadHttpRequestException("The character encoding of the body is not known: send UTF-8.", StatusCodes.Status415UnsupportedMediaType)
            : next(http);
}
