using Microsoft.AspNetCore.Http;

namespace Triage.Service.Http;

/// <summary>
/// Writes come from the bench's own pages, or from a program that is no browser. A browser says of every write where it comes from, whatever the body:
/// Sec-Fetch-Site (Fetch Metadata Request Headers, W3C), or at least Origin (RFC 6454; Fetch standard, 3.2). A page of another port is another origin.
/// </summary>
internal static class OwnOrigin
{
    public static Task Check(HttpContext http, RequestDelegate next) =>
        IsRead(http.Request.Method) || IsOurs(http.Request) ? next(http)
        : Problems.Of(StatusCodes.Status403Forbidden, "A page of somebody else sent this.", "Nothing was written. Record it on the bench's own pages; a program sends neither Origin nor Sec-Fetch-Site.", null).ExecuteAsync(http);

    private static bool IsRead(string method) => HttpMethods.IsGet(method) || HttpMethods.IsHead(method) || HttpMethods.IsOptions(method);

    private static bool IsOurs(HttpRequest request) => (request.Headers["Sec-Fetch-Site"].ToString(), request.Headers.Origin.ToString()) switch
    {
        ("same-origin" or "none", _) => true,
        ({ Length: > 0 }, _) => false,
        (_, "") => true,
        (_, var origin) => origin == $"{request.Scheme}://{request.Host}",
    };
}
