using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;
using Triage.Service.Http;
using Triage.Service.Phones;
using Triage.Workshop;
using Triage.Workshop.Books;
using Triage.Workshop.Keeping;

namespace Triage.Service.Keeping;

/// <summary>One's own book in one file to download, a backup put back beside it, and every file looked over.</summary>
internal static class BackupEndpoints
{
    private const string MediaType = "application/zip";

    /// <summary>Bytes of a backup that comes by the page; a larger one is restored with the command.</summary>
    private const long MostBytes = 4_000_000_000;

    public static void MapKeeping(this IEndpointRouteBuilder pages)
    {
        pages.MapGet("/backup", () => PageResults.Of<BackupPage>([]));
        pages.MapGet("/backup/file", (LiveBench bench, HttpContext http) => Made(bench, http, PageResults.Stop));
        pages.MapPost("/backup", Restore).WithMetadata(new RequestSizeLimitAttribute(MostBytes));
        pages.MapGet("/verify", () => PageResults.Of<VerifyPage>([]));
        pages.MapPost("/verify", Verify);
    }

    public static void MapBackup(this IEndpointRouteBuilder api) =>
        api.MapGet("/backup", (LiveBench bench, HttpContext http) => Made(bench, http, Problems.Of)).WithTags("bench")
            .WithSummary("One's own book whole, as a zip with a checksum for each file. Owners' names are in it.")
            .Produces<byte[]>(200, MediaType).ProducesProblem(503);

    private static IResult Made(LiveBench bench, HttpContext http, Func<Refusal, IResult> refuse)
    {
        if (Own(bench) is not { } own)
            return refuse(NoBookOfOnesOwn);
        var name = FormattableString.Invariant($"{own.Name}-{bench.Clock.GetLocalNow():yyyy-MM-dd}.zip");
        var made = BackingUp.BackUp(own, PassingFolder.For(http, name), bench.Clock, stop: http.RequestAborted);
        return made.Refused is { } refused ? refuse(refused)
            : made.Unread is [var missing, ..] ? refuse(new(RefusalKind.CannotWrite, $"{missing.Path}: {missing.Why}", "No backup was made. Look after that file; triage backup makes one without it."))
            : Results.File(made.File!, MediaType, name);
    }

    private static async Task<IResult> Restore(HttpContext http, LiveBench bench, IAntiforgery antiforgery)
    {
        if (!Doorkeeper.IsFromThisMachine(http))
            return PageResults.Stop("A backup is restored at the bench's computer only.", "Open this page there.", StatusCodes.Status403Forbidden);
        var form = await Form.Fields(http, new() { MultipartBodyLengthLimit = MostBytes });
        var done = await antiforgery.IsRequestValidAsync(http) ? await Restored(http, bench, form) : new() { Refused = FormRefusals.Old };
        return PageResults.Of<BackupPage>(new() { ["Done"] = done, ["Name"] = form["name"].ToString() }, done.Refused is { } refused ? Problems.StatusOf(refused.Kind) : StatusCodes.Status200OK);
    }

    /// <summary>Only ever into a new folder beside one's own book.</summary>
    private static async Task<RestoreResult> Restored(HttpContext http, LiveBench bench, IFormCollection form)
    {
        if (Own(bench) is not { } own)
            return new() { Refused = NoBookOfOnesOwn };
        var name = form["name"].ToString().Trim();
        if (name.Length is 0 or > 60 || !name.All(c => char.IsLetterOrDigit(c) || c is '-' or '_'))
            return new() { Refused = new(RefusalKind.NotUnderstood, $"“{name}” is no name for a new folder.", "Use letters, digits, hyphens.") };
        if (form.Files["backup"] is not { Length: > 0 } sent)
            return new() { Refused = new(RefusalKind.NotUnderstood, "No backup was chosen.", "Choose the file, and send it again.") };
        var file = PassingFolder.For(http, "backup.zip");
        await using (var kept = File.Create(file))
            await sent.CopyToAsync(kept, http.RequestAborted);
        return Restoring.Restore(file, Path.Combine(Path.GetDirectoryName(Path.TrimEndingDirectorySeparator(Path.GetFullPath(own.Folder)))!, name), stop: http.RequestAborted);
    }

    private static async Task<IResult> Verify(HttpContext http, LiveBench bench, IAntiforgery antiforgery)
    {
        var form = new Form(await Form.Fields(http));
        var accepted = form.Need("do") == "accept";
        var found = !await antiforgery.IsRequestValidAsync(http) ? new() { Refused = FormRefusals.Old }
            : Own(bench) is { } own ? Verifying.Verify(own, bench.Clock, accepted, stop: http.RequestAborted)
            : new() { Refused = NoBookOfOnesOwn };
        return PageResults.Of<VerifyPage>(new() { ["Found"] = found, ["Accepted"] = accepted }, found.Refused is { } refused ? Problems.StatusOf(refused.Kind) : StatusCodes.Status200OK);
    }

    private static BookSource? Own(LiveBench bench) => bench.Books.FirstOrDefault(b => b.Writable);

    private static Refusal NoBookOfOnesOwn { get; } = new(RefusalKind.CannotWrite, "None of the open books is one's own.", "Start with --book FOLDER, a folder of your own.");
}
