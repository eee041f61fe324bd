using Microsoft.AspNetCore.Http;

namespace Triage.Service.Http;

/// <summary>What a browser may do with our pages: show them with our style sheet and script, send forms back to us, and nothing else.</summary>
internal static class BrowserRules
{
    public static Task Set(HttpContext http, RequestDelegate next)
    {
        var headers = http.Response.Headers;
        headers.ContentSecurityPolicy = "default-src 'none'; style-src 'self'; script-src 'self'; connect-src 'self'; img-src 'self' data:; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";
        headers.XContentTypeOptions = "nosniff";
        // with no-referrer a form of ours would send "Origin: null"
        headers["Referrer-Policy"] = "same-origin";
        return next(http);
    }
}
