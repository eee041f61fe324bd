using Microsoft.AspNetCore.Connections;
using Microsoft.AspNetCore.Http;
using Triage.Service.Owner;

namespace Triage.Service.Phones;

/// <summary>
/// Who comes in. Connections to the loopback listener bear a mark, and have to be the owner's; whatever bears none comes from the network,
/// and without a paired phone's session reaches the pairing page and its style sheet only.
/// </summary>
/// <param name="owner">Null: everybody who uses this machine comes in.</param>
internal sealed class Doorkeeper(Func<PairedPhones> phones, OwnerDoor? owner)
{
    /// <summary>The prefix makes browsers refuse it without Secure, with a Domain, or for part of the site (RFC 6265bis, 4.1.3.2).</summary>
    public const string Cookie = "__Host-bench-phone";

    public const string PairingPage = "/pair";
    public const string PhonesPage = "/phones";

    private static readonly string[] OpenToAll = [PairingPage, "/bench.css"];

    /// <summary>Marks what comes in by the loopback listener.</summary>
    public static ConnectionDelegate Mark(ConnectionDelegate next) => connection =>
    {
        connection.Features.Set(new FromThisMachine());
        return next(connection);
    };

    public static bool IsFromThisMachine(HttpContext http) => http.Features.Get<FromThisMachine>() is not null;

    public Task Admit(HttpContext http, RequestDelegate next) =>
        IsFromThisMachine(http) ? Loopback.OnlyOwnNames(http, owner is null ? next : here => owner.Admit(here, next))
        : !NetworkNames.IsOwn(http.Request.Host.Host, http.Connection.LocalIpAddress) ? Loopback.TurnAway(http, "Open it under the address that the pairing shows.")
        : OpenToAll.Contains(http.Request.Path.Value, StringComparer.Ordinal) ? next(http)
        : !phones().Knows(http.Request.Cookies[Cookie]) ? ToPairing(http)
        : http.Request.Path.StartsWithSegments(PhonesPage) ? OnlyThere(http)
        : next(http);

    /// <summary>People are led to the pairing page, programs told.</summary>
    private static Task ToPairing(HttpContext http)
    {
        if (!http.Request.Headers.Accept.ToString().Contains("text/html", StringComparison.OrdinalIgnoreCase) || http.Request.Path.StartsWithSegments("/api"))
            return Results.Problem(title: "This phone is not paired.", detail: $"Pair it at {PairingPage} with a code from the bench's computer.", statusCode: StatusCodes.Status401Unauthorized).ExecuteAsync(http);
        http.Response.StatusCode = StatusCodes.Status303SeeOther;
        http.Response.Headers.Location = PairingPage;
        return Task.CompletedTask;
    }

    private static Task OnlyThere(HttpContext http) => Results.Problem(
        title: "Phones are let in and shut out at the bench's computer only.", detail: $"Open {PhonesPage} there.", statusCode: StatusCodes.Status403Forbidden).ExecuteAsync(http);

    private sealed class FromThisMachine;
}
