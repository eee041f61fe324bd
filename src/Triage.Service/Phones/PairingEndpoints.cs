using System.Collections.Immutable;
using System.Net;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Triage.Service.Http;
using Triage.Workshop;

namespace Triage.Service.Phones;

/// <summary>The pairing page, and the list of phones that only this machine sees.</summary>
internal static class PairingEndpoints
{
    private const int LongestName = 60;
    private static readonly TimeSpan CookieLifetime = TimeSpan.FromDays(400); // the most that browsers keep (RFC 6265bis, 5.5)

    public static void MapPairing(this IEndpointRouteBuilder pages)
    {
        pages.MapGet(Doorkeeper.PairingPage, (HttpContext http, string? code) =>
            Doorkeeper.IsFromThisMachine(http) ? Results.Redirect(Doorkeeper.PhonesPage) : Asked(code, null, StatusCodes.Status200OK));
        pages.MapPost(Doorkeeper.PairingPage, Pair);
        pages.MapGet(Doorkeeper.PhonesPage, (IServiceProvider services) => Listed(services, null));
        pages.MapPost($"{Doorkeeper.PhonesPage}/code", (HttpContext http, IServiceProvider services, IAntiforgery antiforgery) =>
            Changed(http, antiforgery, _ => services.GetService<PhoneDoor>() is { } door ? Listed(services, door.Invite()) : Listed(services, null)));
        pages.MapPost($"{Doorkeeper.PhonesPage}/out", (HttpContext http, IServiceProvider services, IAntiforgery antiforgery) =>
            Changed(http, antiforgery, form =>
            {
                services.GetRequiredService<PairedPhones>().Revoke(form.Need("phone"));
                return PageResults.SeeOther(http, Doorkeeper.PhonesPage);
            }));
    }

    private static async Task<IResult> Pair(HttpContext http, LiveBench bench, IServiceProvider services, IAntiforgery antiforgery)
    {
        var form = new Form(await Form.Fields(http));
        if (services.GetService<PhoneDoor>() is not { } door)
            return PageResults.Stop("No phone is let in now.", "Start the bench with --phone.", StatusCodes.Status403Forbidden);
        if (!await antiforgery.IsRequestValidAsync(http))
            return Asked(form.Need("code"), FormRefusals.Old.ToString(), StatusCodes.Status403Forbidden);
        return door.Code.Try(form.Need("code"), http.Connection.RemoteIpAddress ?? IPAddress.None) switch
        {
            CodeTried.Right => Welcomed(http, bench, services.GetRequiredService<PairedPhones>(), form.Text("name") ?? "phone"),
            CodeTried.Wrong => Asked(null, "That is not the code. Look at the bench's computer, and type it again.", StatusCodes.Status403Forbidden),
            CodeTried.TooOften => Asked(null, "The code was typed wrong too often from here. Wait a minute, then type it again.", StatusCodes.Status429TooManyRequests),
            CodeTried.Void => Asked(null, "No code holds now: it was used, or is over ten minutes old. Make a new one at the bench's computer, on the page of phones.", StatusCodes.Status403Forbidden),
        };
    }

    private static IResult Welcomed(HttpContext http, LiveBench bench, PairedPhones phones, string name)
    {
        try
        {
            var secret = phones.Add(name[..Math.Min(name.Length, LongestName)], bench.Clock.GetLocalNow());
            http.Response.Cookies.Append(Doorkeeper.Cookie, secret, new() { Secure = true, HttpOnly = true, SameSite = SameSiteMode.Strict, Path = "/", MaxAge = CookieLifetime });
            return PageResults.SeeOther(http, "/");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return CannotWrite(e);
        }
    }

    private static async Task<IResult> Changed(HttpContext http, IAntiforgery antiforgery, Func<Form, IResult> change)
    {
        var form = new Form(await Form.Fields(http));
        if (!await antiforgery.IsRequestValidAsync(http))
            return PageResults.Stop(FormRefusals.Old);
        try
        {
            return change(form);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return CannotWrite(e);
        }
        catch (CannotServeException e)
        {
            return PageResults.Stop("The phones cannot be listed.", e.Message, StatusCodes.Status503ServiceUnavailable);
        }
    }

    private static IResult CannotWrite(Exception e) => PageResults.Stop(
        "The list of phones cannot be written.", $"{e.Message} Look for a full disk or a read-only folder, then try again. A phone shut out stays out until the bench is started again.", StatusCodes.Status503ServiceUnavailable);

    private static IResult Asked(string? code, string? refused, int status) =>
        PageResults.Of<PairPage>(new() { ["Code"] = code ?? "", ["Refused"] = refused }, status);

    private static IResult Listed(IServiceProvider services, Invitation? invitation)
    {
        try
        {
            return PageResults.Of<PhonesPage>(new() { ["Phones"] = services.GetRequiredService<PairedPhones>().All.ToImmutableArray(), ["Serving"] = services.GetService<PhoneDoor>() is not null, ["Invitation"] = invitation });
        }
        catch (CannotServeException e)
        {
            return PageResults.Stop("The phones cannot be listed.", e.Message, StatusCodes.Status503ServiceUnavailable);
        }
    }
}
