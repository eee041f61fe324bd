using System.Net;
using Microsoft.AspNetCore.Http;

namespace Triage.Service;

/// <summary>Only this machine comes in: there is no pairing yet that would tell who else may.</summary>
internal static class Loopback
{
    private static readonly string[] Names = ["localhost", "127.0.0.1", "[::1]"];

    /// <exception cref="CannotServeException">The address is not this machine's own.</exception>
    public static IPAddress Address(string address) =>
        address.Trim().ToLowerInvariant() switch
        {
            "localhost" => IPAddress.Loopback,
            var text when IPAddress.TryParse(text.Trim('[', ']'), out var ip) && IPAddress.IsLoopback(ip) => ip,
            _ => throw new CannotServeException(
                $"The bench is not served on {address}: there is no pairing yet, so only this machine may come in. Leave the address out, or use 127.0.0.1."),
        };

    /// <summary>A page elsewhere can point a name of its own at 127.0.0.1; its browser then says that name, and is turned away.</summary>
    public static async Task OnlyOwnNames(HttpContext http, RequestDelegate next)
    {
        if (Names.Contains(http.Request.Host.Host, StringComparer.OrdinalIgnoreCase))
        {
            await next(http);
            return;
        }

        await Results.Problem(
            title: "Not this bench's name.",
            detail: "The bench answers to localhost, 127.0.0.1 and [::1] only. Open it under one of these.",
            statusCode: StatusCodes.Status421MisdirectedRequest).ExecuteAsync(http);
    }
}
