using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;
using Triage.Notes.Kinds;
using Triage.Service.Http;
using Triage.Service.Shown;
using Triage.Workshop;
using Triage.Workshop.Steps;

namespace Triage.Service.Jobs;

/// <summary>A job's pages, and the forms on them.</summary>
internal static class JobPageEndpoints
{
    public static void MapJobPages(this IEndpointRouteBuilder pages)
    {
        pages.MapGet("/jobs/{id}", (string id, LiveBench bench, KnownAnswers answers) => Shown(id, "", bench, answers, null));
        pages.MapGet("/jobs/{id}/{**page}", (string id, string page, LiveBench bench, KnownAnswers answers) =>
            JobPages.Find(page) is null ? Results.Redirect(Addresses.Job(id)) : Shown(id, page, bench, answers, null));
        pages.MapPost("/line", RecordLine).WithMetadata(new RequestSizeLimitAttribute(PhotoEndpoints.MostBytes));
        pages.MapPost("/jobs/{id}/{step}", Record).WithMetadata(new RequestSizeLimitAttribute(PhotoEndpoints.MostBytes));
    }

    /// <summary>A quick line from the shelf: the job is one of the form's fields.</summary>
    private static async Task<IResult> RecordLine(HttpContext http, LiveBench bench, KnownAnswers answers, StepRecorder recorder, IAntiforgery antiforgery)
    {
        var job = new Form(await Form.Fields(http)).Need("job");
        return job.Length == 0
            ? PageResults.Stop("No job was chosen for the line.", "Go back, choose one, and send it again: the browser keeps what was typed.", StatusCodes.Status422UnprocessableEntity)
            : await Record(job, "line", http, bench, answers, recorder, antiforgery);
    }

    private static async Task<IResult> Record(string id, string step, HttpContext http, LiveBench bench, KnownAnswers answers, StepRecorder recorder, IAntiforgery antiforgery)
    {
        if (!JobForms.All.TryGetValue(step, out var record))
            return PageResults.Stop("There is no such step.", "Go back to the job, and use its forms.", StatusCodes.Status404NotFound);
        var fields = await Form.Fields(http);
        var form = new Form(fields);
        var result = await antiforgery.IsRequestValidAsync(http)
            ? PageResults.Try(() => recorder.Record(http, id, step, _ => Done(bench, id, record, form)))
            : new() { Refused = FormRefusals.Old };
        var page = EndsItsPage(step) && result.Refused is null ? "" : form.Need("page");
        if (result is { Refused: null, TakenBack: not null } or { Refused: null, Kept.IsEmpty: false } || (step == "put-back" && result is { Refused: null, Remarks.IsEmpty: false }))
            return Shown(id, page, bench, answers, null, result, form.Index("about"));
        return result.Refused is { } refused
            ? Shown(id, page, bench, answers, new(step, fields, refused))
            : PageResults.SeeOther(http, $"{Addresses.Job(id, JobPages.Find(page) is null ? "" : page)}#{Section(form)}");
    }

    private static StepResult Done(LiveBench bench, string id, JobForms.FormStep record, Form form)
    {
        var now = bench.Current;
        if (now.Notes.Find<Job>(id) is not { } job)
            return new() { Refused = NoSuch.Job(id, now) };
        return JobVersion.Refuses(now, job, form) is { } refused ? new() { Job = job, Refused = refused } : record(bench, job, form);
    }

    /// <summary>Done, it leads back to the job.</summary>
    private static bool EndsItsPage(string step) => step == "close" || step.StartsWith("new-", StringComparison.Ordinal);

    private static string Section(Form form) => form.Text("back") is { } back && back.All(c => char.IsAsciiLetter(c) || c == '-') ? back : "next";

    private static IResult Shown(string id, string page, LiveBench bench, KnownAnswers answers, Sent? sent, StepResult? done = null, int at = -1)
    {
        var now = bench.Current;
        if (now.Notes.Find<Job>(id) is not { } job)
            return PageResults.Stop(NoSuch.Job(id, now));
        var asked = JobPages.Find(page);
        var shown = asked is null || (!job.IsOpen && !asked.WhenClosed) ? JobPages.All[0] : asked;
        return shown.Show(
            new() { ["View"] = JobView.Of(now, job, answers, shown == asked ? page : "") with { TakenBack = done?.TakenBack is { } entry ? (at, entry) : null, Remarks = done?.Remarks ?? [] }, ["Sent"] = sent },
            sent is null ? StatusCodes.Status200OK : Problems.StatusOf(sent.Refused.Kind));
    }
}
