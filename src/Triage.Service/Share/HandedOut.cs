using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Triage.Service.Http;
using Triage.Workshop;
using Triage.Workshop.Exchange.Share;

namespace Triage.Service.Share;

/// <summary>One's own book for others, as one file.</summary>
internal static class HandedOut
{
    private const string MediaType = "application/zip";

    public static void MapShare(this IEndpointRouteBuilder api) =>
        api.MapGet("/share", Share).WithTags("bench").WithSummary("One's own book for others: without owner, serial number, contact, and what photos tell beside the picture. Names in the running text are not recognised: read it before giving it away.")
            .Produces<byte[]>(200, MediaType).ProducesProblem(503);

    /// <summary>Written whole to a folder of its own, which is gone once the answer is sent.</summary>
    private static IResult Share(LiveBench bench, HttpContext http, bool openJobs = false)
    {
        if (bench.Books.FirstOrDefault(b => b.Writable) is not { } own)
            return Problems.Of(new(RefusalKind.CannotWrite, "None of the open books is one's own.", "Start with --book FOLDER, a folder of your own."));
        var shared = GivingOut.Share(own, PassingFolder.For(http, $"{own.Name}.zip"), openJobs, stop: http.RequestAborted);
        return shared.Refused is { } refused ? Problems.Of(refused) : Results.File(shared.Place!, MediaType, $"{own.Name}.zip");
    }
}
