using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;
using Triage.Notes.Kinds;
using Triage.Service.Http;
using Triage.Service.Shown;
using Triage.Service.Wire;
using Triage.Workshop;
using Triage.Workshop.Answers;
using Triage.Workshop.Steps;
using StepOutcome = Microsoft.AspNetCore.Http.HttpResults.Results<
    Triage.Service.Http.Tagged<Triage.Service.Wire.WireResult>, Microsoft.AspNetCore.Http.HttpResults.ProblemHttpResult>;

namespace Triage.Service.Jobs;

/// <summary>Jobs over JSON: one address a step. Each takes If-Match with the job's ETag.</summary>
internal static class JobEndpoints
{
    public static void MapJobs(this IEndpointRouteBuilder api)
    {
        var jobs = api.MapGroup("/jobs").WithTags("jobs");
        jobs.MapGet("", (LiveBench bench, KnownAnswers answers) => new Tagged<WireJobLine[]>([.. JobLines.Of(bench.Current, answers)])).WithSummary("Open jobs with what each waits for, then the newest closed ones.");
        jobs.MapPost("", TakeIn).WithSummary("Take a machine in.").Produces<WireResult>(201).ProducesProblem(422).ProducesProblem(503);
        jobs.MapGet("/{id}", GetJob).WithSummary("One job.").ProducesProblem(404);
        jobs.MapGet("/{id}/answer", GetAnswer).WithSummary("Causes, resets worth trying and the next best step.").ProducesProblem(404);
        Step<LineBody>(jobs, "line", "One line as it comes.", (steps, id, b) => steps.Line(id, b.Text));
        Step<SawBody>(jobs, "saw", "A finding seen with a value; not seen is its normal value.", (steps, id, b) => steps.Saw(id, b.Finding, b.Value, [.. b.When ?? []], b.WatchedMinutes, b.Sure, b.ComesAndGoes));
        Step<TestedBody>(jobs, "tested", "A test done.", (steps, id, b) => steps.Tested(id, b.Test, b.Outcome));
        Step<ReadingBody>(jobs, "readings", "A reading, as typed.", (steps, id, b) => steps.Reading(id, b.AsRead()));
        Step<ResetBody>(jobs, "resets", "A reset tried. One that erases is refused until the owner agreed.", (steps, id, b) => steps.Reset(id, b.Reset, b.Effect));
        Step<RoundBody>(jobs, "rounds", "One look at several things: what each showed.", (steps, id, b) => steps.Round(id, b.Round, [.. b.Rows.Select(r => new SeenFinding(r.Finding, r.Value))]));
        Step<SkippedBody>(jobs, "skipped", "A step passed over, or one that cannot be told; it is not offered again.", (steps, id, b) => steps.Skip(id, b.Step, b.Why));
        Step<SecuredBody>(jobs, "secured", "Something secured before the fault is looked for, or not possible.", (steps, id, b) => steps.Secured(id, b.Protect, b.Done));
        Step<CounterClosedBody>(jobs, "counter-closed", "The owner has left.", (steps, id, _) => steps.CloseCounter(id));
        Step<BuildBody>(jobs, "build", "What the machine is like.", (steps, id, b) => steps.TellBuild(id, b.AsBuild()));
        Step<HeldBody>(jobs, "held", "Whether what worked still works.", (steps, id, b) => steps.Held(id, b.Action, b.StillWorks, b.After));
        Step<FixedBody>(jobs, "fixes", "A fix done.", (steps, id, b) => steps.Fixed(id, b.Fix, b.Effect, b.TestedBefore));
        Step<SwappedBody>(jobs, "swaps", "A part exchanged for one known to be good.", (steps, id, b) => steps.Swapped(id, b.Part, b.Fix, b.Effect, b.OldBack));
        Step<OpenedBody>(jobs, "opened", "A step of the access tree opened or shut.", (steps, id, b) => steps.Opened(id, b.Step, b.Shut));
        Step<TakenOffBody>(jobs, "taken-off", "Something taken off, and where it lies.", (steps, id, b) => steps.TakenOff(id, b.What, b.Where, b.BackOn, b.Note));
        Step<PoweredBody>(jobs, "power", "Power put on, with its limit.", (steps, id, b) => steps.Powered(id, b.Stage, b.Current));
        Step<PartBody>(jobs, "parts", "A part needed, ordered, arrived, tested or fitted.", (steps, id, b) => steps.PartMoved(id, b.AsMoved()));
        jobs.MapGet("/{id}/readings", GetReadings).WithSummary("What each reading says of its part.").ProducesProblem(404);
        jobs.MapGet("/{id}/needed-part", GetNeededPart).WithSummary("The part that mending the likeliest cause takes, and what in the drawer may go in; 204 when no part would mend it.").Produces(204).ProducesProblem(404);
        Described(
            jobs.MapPost("/{id}/from-drawer", (string id, [FromBody] StockTakenBody body, HttpContext http, LiveBench bench, StepRecorder recorder) => Outcome(http, bench, recorder, id, "from-drawer", _ => bench.Drawer.Take(id, body.Item))),
            "Take one part out of the drawer for the job.");
        Step<WireConsent>(jobs, "consent", "What the owner agreed to.", (steps, id, b) => steps.Agree(id, new(b.SpendingLimit, b.MayErase, b.OriginalsBack)));
        Step<WireWaiting>(jobs, "waiting", "What it waits for.", (steps, id, b) => steps.WaitFor(id, new(b.For, b.Until)));
        Step<CloseBody>(jobs, "close", "Close it; says what that changed in the knowledge.", (steps, id, b) => steps.Close(id, b.AsRequest()));
        Step<WireFollowUp>(jobs, "follow-ups", "The machine was heard of again.", (steps, id, b) => steps.FollowUp(id, b.CameBack, b.Note));
        Described(jobs.MapDelete("/{id}/waiting", (string id, HttpContext http, LiveBench bench, StepRecorder recorder) => Outcome(http, bench, recorder, id, "waiting", steps => steps.WaitFor(id, null))), "It waits for the bench itself.");
        Described(
            jobs.MapPost("/{id}/log/{entry:int}/photos", Photo).Accepts<byte[]>("image/jpeg", "image/png", "image/webp").WithMetadata(new RequestSizeLimitAttribute(PhotoEndpoints.MostBytes)),
            "Put a photo to a log entry: the body is the file.");
        Described(jobs.MapDelete("/{id}/log/{entry:int}", (string id, int entry, HttpContext http, LiveBench bench, StepRecorder recorder) => Outcome(http, bench, recorder, id, "undo", steps => steps.Undo(id, entry))), "Take one log entry back.");
        jobs.MapGet("/{id}/log/{entry:int}", Entry).WithSummary("One log entry as text; keep it before taking it back, to put it back later.").ProducesProblem(404);
        Described(
            jobs.MapPost("/{id}/log/{entry:int}", (string id, int entry, [FromBody] WireEntryText body, HttpContext http, LiveBench bench, StepRecorder recorder) => Outcome(http, bench, recorder, id, "put-back", steps => steps.PutBack(id, entry, body.Text))),
            "Put an entry back that was taken back.");
        Listed<NewFindingBody>(jobs, "new-finding", "List something seen that no note lists yet.", (listing, id, b) => listing.Finding(id, b.Words, [.. b.Says ?? []]));
        Listed<NewFaultBody>(jobs, "new-fault", "List a cause that no note lists yet.", (listing, id, b) => listing.Fault(id, b.Words, b.Part, b.Fix));
        Listed<NewTestBody>(jobs, "new-test", "List a test that no note lists yet.", (listing, id, b) => listing.Test(id, b.AsTest()));
        Listed<NewDeviceBody>(jobs, "new-device", "List the model that this job is about.", (listing, id, b) => listing.Device(id, b.Name, b.Maker, b.Class));
    }

    private static async Task<StepOutcome> Photo(string id, int entry, HttpContext http, LiveBench bench, StepRecorder recorder)
    {
        using var photo = await SentFile.Read(http, Limits.Photo);
        return Outcome(http, bench, recorder, id, "photo", steps => steps.Photo(id, entry, photo.Bytes));
    }

    private static void Step<TBody>(RouteGroupBuilder jobs, string path, string summary, Func<JobSteps, string, TBody, StepResult> step) =>
        Described(
            jobs.MapPost("/{id}/" + path, (string id, [FromBody] TBody body, HttpContext http, LiveBench bench, StepRecorder recorder) =>
                Outcome(http, bench, recorder, id, path, steps => step(steps, id, body))),
            summary);

    private static void Listed<TBody>(RouteGroupBuilder jobs, string path, string summary, Func<Listing, string, TBody, StepResult> list) =>
        Described(
            jobs.MapPost("/{id}/" + path, (string id, [FromBody] TBody body, HttpContext http, LiveBench bench, StepRecorder recorder) =>
                Outcome(http, bench, recorder, id, path, _ => list(bench.Listing, id, body))),
            summary);

    private static Results<Ok<WireEntryText>, ProblemHttpResult> Entry(string id, int entry, LiveBench bench) =>
        bench.Current.Notes.Find<Job>(id) is not { } job ? Problems.Of(NoSuch.Job(id, bench.Current))
        : entry < 0 || entry >= job.Log.Length ? Problems.Of(NoSuch.Entry(id, entry))
        : TypedResults.Ok(new WireEntryText(EntryText.Of(job.Log[entry])));

    private static void Described(RouteHandlerBuilder route, string summary) =>
        route.WithSummary(summary).ProducesProblem(403).ProducesProblem(404).ProducesProblem(409).ProducesProblem(412).ProducesProblem(422).ProducesProblem(503);

    private static StepOutcome Outcome(HttpContext http, LiveBench bench, StepRecorder recorder, string id, string name, Func<JobSteps, StepResult> step)
    {
        if (recorder.Record(http, id, name, step) is not { } result)
            return Problems.Stale(id);
        return result.Refused is { } refused ? Problems.Of(refused) : Done(result, bench.Current);
    }

    private static Results<Tagged<WireResult>, ProblemHttpResult> TakeIn(TakeInBody body, HttpContext http, LiveBench bench, StepRecorder recorder)
    {
        var result = recorder.Record(http, "", "take-in", steps => steps.TakeIn(new()
        {
            Machine = body.Machine ?? "",
            Complaint = body.Complaint,
            Technician = body.Technician,
            Owner = body.Owner,
            Serial = body.Serial,
            History = [.. body.History ?? []],
            Consent = new(body.Consent?.SpendingLimit, body.Consent?.MayErase, body.Consent?.OriginalsBack),
            Worth = body.Worth,
            Description = body.Description,
            Build = body.Build is null ? Build.Untold : new BuildBody(body.Build).AsBuild(),
            NoOwner = body.NoOwner ?? false,
        }))!;
        return result.Refused is { } refused ? Problems.Of(refused) : Done(result, bench.Current, StatusCodes.Status201Created);
    }

    private static Tagged<WireResult> Done(StepResult result, Bench bench, int status = StatusCodes.Status200OK)
    {
        var job = WireJob.Of(result.Job!, bench);
        return new(
            new(job) { Remarks = result.Remarks, Taught = WireTaught.Of(result.Taught) },
            status,
            status == StatusCodes.Status201Created ? $"/api/jobs/{job.Id}" : null)
        {
            Tag = http => EntityTag.Of(Tagged<WireJob>.Bytes(http, job)),
        };
    }

    private static Results<Tagged<WireJob>, ProblemHttpResult> GetJob(string id, LiveBench bench) =>
        bench.Current.Notes.Find<Job>(id) is { } job ? new Tagged<WireJob>(WireJob.Of(job, bench.Current)) : Problems.Of(NoSuch.Job(id, bench.Current));

    private static Results<Tagged<WireAnswer>, ProblemHttpResult> GetAnswer(string id, LiveBench bench, KnownAnswers answers)
    {
        var now = bench.Current;
        if (now.Notes.Find<Job>(id) is not { } job)
            return Problems.Of(NoSuch.Job(id, now));
        var asked = answers.For(now, job);
        return asked.Refused is { } refused ? Problems.Of(refused) : new Tagged<WireAnswer>(WireAnswer.Of(asked.Answer!));
    }

    private static Results<Tagged<WireReading[]>, ProblemHttpResult> GetReadings(string id, LiveBench bench) =>
        bench.Current.Notes.Find<Job>(id) is { } job ? new Tagged<WireReading[]>([.. WireReading.Of(job, bench.Current)]) : Problems.Of(NoSuch.Job(id, bench.Current));

    private static Results<Tagged<WireNeededPart>, NoContent, ProblemHttpResult> GetNeededPart(string id, LiveBench bench, KnownAnswers answers)
    {
        var now = bench.Current;
        if (now.Notes.Find<Job>(id) is not { } job)
            return Problems.Of(NoSuch.Job(id, now));
        return NeededPart.Of(now.Notes, now.ScopeOf(job), job.IsOpen ? answers.For(now, job).Answer : null) is { } needed
            ? new Tagged<WireNeededPart>(WireNeededPart.Of(needed, now))
            : TypedResults.NoContent();
    }
}
