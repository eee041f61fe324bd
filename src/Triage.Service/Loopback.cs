using System.Net;
using Microsoft.AspNetCore.Http;

namespace Triage.Service;

/// <summary>The side on which only this machine comes in, unencrypted and without pairing.</summary>
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
                $"The bench is not served on {address}: only this machine may come in there. Leave the address out, or use 127.0.0.1; phones are let in with --phone."),
        };

    /// <summary>A page elsewhere can point a name of its own at 127.0.0.1; its browser then says that name, and is turned away.</summary>
    public static async Task OnlyOwnNames(HttpContext http, RequestDelegate next)
    {
        if (Names.Contains(http.Request.Host.Host, StringComparer.OrdinalIgnoreCase))
        {
            await next(http);
            return;
        }

        await TurnAway(http, "The bench answers to localhost, 127.0.0.1 and [::1] only. Open it under one of these.");
    }

    public static Task TurnAway(HttpContext http, string instead) =>
        Results.Problem(title: "Not this bench's name.", detail: instead, statusCode: StatusCodes.Status421MisdirectedRequest).ExecuteAsync(http);
}
