using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Triage.Service.Http;

namespace Triage.Service.Owner;

/// <summary>
/// Who comes in from this machine: its owner, not its other users. A browser shows a cookie that it got for a one-time address, a program the
/// key. Cookies do not tell ports apart (RFC 6265, 8.5): the cookie opens the bench, but neither makes addresses nor is it the key.
/// </summary>
internal sealed class OwnerDoor(OwnerKey key, TimeProvider clock)
{
    public const string Cookie = "bench-owner";
    public const string WayIn = "/in";

    private const string Bearer = "Bearer ";

    /// <summary>A printed address is opened within it; whoever finds it later finds it void.</summary>
    private static readonly TimeSpan Lifetime = TimeSpan.FromHours(1);

    private static readonly TimeSpan CookieLifetime = TimeSpan.FromDays(30);

    private readonly DateTimeOffset opened = DateTimeOffset.FromUnixTimeMilliseconds(clock.GetUtcNow().ToUnixTimeMilliseconds());
    private readonly Dictionary<string, DateTimeOffset> used = new(StringComparer.Ordinal);

    /// <summary>Path and query of a new one-time address.</summary>
    public string Address() => key.WayIn(clock.GetUtcNow());

    public Task Admit(HttpContext http, RequestDelegate next) =>
        Knows(http.Request) || (HttpMethods.IsGet(http.Request.Method) && http.Request.Path.Value is WayIn or "/bench.css") ? next(http) : TurnAway(http);

    /// <summary>Changes a one-time code for the cookie.</summary>
    public IResult Enter(HttpContext http, string? once)
    {
        if (!Knows(http.Request) && !Use(once ?? ""))
            return Stranger("/", used: true);
        http.Response.Cookies.Append(Cookie, key.ForBrowsers, new() { HttpOnly = true, SameSite = SameSiteMode.Strict, Path = "/", MaxAge = CookieLifetime });
        return PageResults.SeeOther(http, "/");
    }

    private bool Knows(HttpRequest request) =>
        (request.Cookies[Cookie] is { } cookie && OwnerKey.Same(cookie, key.ForBrowsers))
        || (request.Headers.Authorization.ToString() is var shown && shown.StartsWith(Bearer, StringComparison.OrdinalIgnoreCase) && OwnerKey.Same(shown[Bearer.Length..].Trim(), key.Text));

    /// <summary>Codes from before this start are void: what was used then is not remembered.</summary>
    private bool Use(string once)
    {
        var now = clock.GetUtcNow();
        if (key.Made(once) is not { } made || made < opened || made + Lifetime < now)
            return false;
        lock (used)
        {
            foreach (var old in used.Where(u => u.Value + Lifetime < now).Select(u => u.Key).ToList())
                used.Remove(old);
            return used.TryAdd(once, made);
        }
    }

    /// <summary>People are told how they come in, programs too.</summary>
    private static Task TurnAway(HttpContext http)
    {
        http.Response.Headers.WWWAuthenticate = "Bearer";
        return http.Request.Headers.Accept.ToString().Contains("text/html", StringComparison.OrdinalIgnoreCase) && !http.Request.Path.StartsWithSegments("/api")
            ? Stranger(HttpMethods.IsGet(http.Request.Method) ? $"/{(http.Request.Path + http.Request.QueryString).TrimStart('/')}" : "/", used: false).ExecuteAsync(http)
            : Problems.Of(StatusCodes.Status401Unauthorized, "This bench is somebody's own.", "Send “Authorization: Bearer” with the owner's key; “triage address” says in which file it lies.", null).ExecuteAsync(http);
    }

    private static IResult Stranger(string here, bool used) =>
        PageResults.Of<StrangerPage>(new() { ["Here"] = here, ["Used"] = used }, StatusCodes.Status401Unauthorized);
}

/// <summary>The address that lets the owner in; on a bench that is open to this machine it leads to the shelf.</summary>
internal static class WayIn
{
    public static void MapWayIn(this IEndpointRouteBuilder pages) => pages.MapGet(OwnerDoor.WayIn, (HttpContext http, string? once) =>
        http.RequestServices.GetService<OwnerDoor>()?.Enter(http, once) ?? PageResults.SeeOther(http, "/")).ExcludeFromDescription();
}
