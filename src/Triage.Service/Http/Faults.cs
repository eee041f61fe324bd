using System.Text.Json;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.WebUtilities;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace Triage.Service.Http;

/// <summary>Whatever goes wrong below the steps: a problem document for programs, a page for people, never a stack trace.</summary>
internal static partial class Faults
{
    /// <summary>The caller's fault and not the program's: it is logged in one line.</summary>
    public static bool IsClients(Exception met) => met is BadHttpRequestException;

    public static Task Handle(HttpContext http)
    {
        var (status, what, instead) = http.Features.Get<IExceptionHandlerFeature>()?.Error switch
        {
            BadHttpRequestException { InnerException: JsonException json } => (StatusCodes.Status400BadRequest, "The JSON cannot be read.", Where(json)),
            BadHttpRequestException bad => (bad.StatusCode, "The request cannot be read.", bad.Message),
            _ => (StatusCodes.Status500InternalServerError, "Something went wrong in the program.", "Nothing of this step was kept. The log names where; try again, and look at the notes with the check if it stays."),
        };
        if (status < StatusCodes.Status500InternalServerError)
            LogRefused(http.RequestServices.GetRequiredService<ILoggerFactory>().CreateLogger(typeof(Faults)), http.Request.Method, http.Request.Path, status, instead);
        return Answer(http, status, what, instead);
    }

    public static Task Say(StatusCodeContext context)
    {
        var http = context.HttpContext;
        var status = http.Response.StatusCode;
        return Answer(http, status, ReasonPhrases.GetReasonPhrase(status) + ".", status switch
        {
            StatusCodes.Status404NotFound => "Nothing lies at this address. Start from the shelf at /, or from /openapi/v1.json.",
            StatusCodes.Status405MethodNotAllowed => "This address takes another method; /openapi/v1.json says which.",
            StatusCodes.Status415UnsupportedMediaType => "Send application/json.",
            _ => "The request cannot be answered as it is.",
        });
    }

    private static string Where(JsonException json) =>
        string.IsNullOrEmpty(json.Path) ? "Send one JSON object as /openapi/v1.json describes it." : $"Look at {json.Path}, line {json.LineNumber + 1}: /openapi/v1.json says what may stand there.";

    [LoggerMessage(Level = LogLevel.Warning, Message = "{Method} {Path} refused with {Status}: {Why}")]
    private static partial void LogRefused(ILogger log, string method, string path, int status, string why);

    private static Task Answer(HttpContext http, int status, string what, string instead) =>
        http.Request.Path.StartsWithSegments("/api") || http.Request.Path.StartsWithSegments("/openapi")
            ? Problems.Of(status, what, instead, null).ExecuteAsync(http)
            : PageResults.Stop(what, instead, status).ExecuteAsync(http);
}
