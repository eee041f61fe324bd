using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Triage.Notes.Kinds;
using Triage.Service.Ask;
using Triage.Service.Find;
using Triage.Service.Http;
using Triage.Service.Jobs;
using Triage.Service.Keeping;
using Triage.Service.NotePages;
using Triage.Service.Phones;
using Triage.Service.Reviews;
using Triage.Service.Settings;
using Triage.Service.Shelf;
using Triage.Service.Stock;
using Triage.Workshop;

namespace Triage.Service;

/// <summary>Addresses of the pages. A form that went through answers with a redirect, one that was refused with its page and what was typed.</summary>
internal static class PageEndpoints
{
    /// <summary>Longer questions are answered where they are posted: an address has to stay short.</summary>
    private const int LongestAddress = 1_500;

    public static void MapPages(this IEndpointRouteBuilder routes)
    {
        var pages = routes.MapGroup("").ExcludeFromDescription();
        pages.MapGet("/bench.css", CarriedFile.Style.Get);
        pages.MapGet("/bench.js", CarriedFile.Script.Get);
        pages.MapGet("/", () => PageResults.Of<ShelfPage>([]));
        pages.MapGet("/ask", (LiveBench bench, string? machine, string? complaint) => Asked(bench, machine, complaint));
        pages.MapGet("/ask/causes", (LiveBench bench, string? machine, string? complaint) => CausesAsked(bench, machine, complaint));
        pages.MapTakingIn();
        pages.MapPost("/ask", Ask);
        pages.MapJobPages();
        pages.MapPhotos();
        pages.MapDrawings();
        pages.MapDrawer();
        pages.MapPairing();
        pages.MapTexts();
        pages.MapPast();
        pages.MapSettings();
        pages.MapKeeping();
        pages.MapGet("/find", (HttpContext http) => PageResults.Of<FindPage>(new() { ["Asked"] = SearchAddress.Of(http.Request.Query) }));
        pages.MapGet("/notes/{id}", GetNote);
        pages.MapGet("/review", (string? device) => PageResults.Of<ReviewPage>(new() { ["Device"] = device }));
        pages.MapGet("/review/forecasts", (LiveBench bench) => PageResults.Of<ForecastsPage>(new() { ["Work"] = bench.Current.ForecastsInBackground() }));
        pages.MapGet("/check", () => PageResults.Of<CheckPage>([]));
    }

    /// <summary>Nothing asked yet is no refusal.</summary>
    private static IResult Asked(LiveBench bench, string? machine, string? complaint)
    {
        var asking = bench.Steps.Ask(machine ?? "", complaint ?? "");
        var refused = machine is null && complaint is null ? null : asking.Refused;
        return PageResults.Of<AskPage>(
            new() { ["Now"] = bench.Current, ["Asking"] = asking, ["Machine"] = machine ?? "", ["Complaint"] = complaint ?? "", ["Refused"] = refused, ["Behind"] = Short(AskAddress("/ask/causes", machine, complaint)) },
            refused is null ? StatusCodes.Status200OK : Problems.StatusOf(refused.Kind));
    }

    /// <summary>Nothing is written, so it needs no proof of where the form came from.</summary>
    private static async Task<IResult> Ask(HttpContext http, LiveBench bench)
    {
        var form = new Form(await Form.Fields(http));
        var (machine, complaint) = (form.Need("machine"), form.Need("complaint"));
        return Short(AskAddress("/ask", machine, complaint)) is { } address ? PageResults.SeeOther(http, address) : Asked(bench, machine, complaint);
    }

    /// <summary>The numbers behind an answer, one tap further.</summary>
    private static IResult CausesAsked(LiveBench bench, string? machine, string? complaint)
    {
        var whole = AskAddress("/ask", machine, complaint);
        return bench.Steps.Ask(machine ?? "", complaint ?? "").Answer is { } answer
            ? PageResults.Of<AskedCausesPage>(new() { ["Answer"] = answer, ["Complaint"] = complaint ?? "", ["Whole"] = whole })
            : Results.Redirect(whole);
    }

    private static string AskAddress(string path, string? machine, string? complaint) =>
        $"{path}{QueryString.Create(new Dictionary<string, string?> { ["machine"] = machine, ["complaint"] = complaint })}";

    private static string? Short(string address) => address.Length < LongestAddress ? address : null;

    private static IResult GetNote(string id, LiveBench bench)
    {
        var now = bench.Current;
        return now.Notes.Find<Note>(id) is { } note ? PageResults.Of<NotePage>(new() { ["Note"] = note, ["Now"] = now }) : PageResults.Stop(NoSuch.Note(id, now));
    }
}
