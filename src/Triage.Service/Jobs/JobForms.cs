using System.Collections.Frozen;
using Triage.Notes.Kinds;
using Triage.Service.Http;
using Triage.Workshop;
using Triage.Workshop.Jobs;
using Triage.Workshop.Steps;

namespace Triage.Service.Jobs;

/// <summary>Every form of a job's page, and the step it stands for.</summary>
internal static class JobForms
{
    public delegate StepResult FormStep(LiveBench bench, Job job, Form form);

    public static FrozenDictionary<string, FormStep> All { get; } = new Dictionary<string, FormStep>
    {
        ["line"] = (bench, job, form) => form.Photo("photo") is { } photo ? bench.Steps.Line(job.Id, form.Need("text"), photo) : bench.Steps.Line(job.Id, form.Need("text")),
        ["photo"] = (bench, job, form) => bench.Steps.Photo(job.Id, form.Index("about"), form.Photo("photo") ?? throw new NotUnderstoodException("No photo was chosen.", "Choose one, then press the button.")),
        ["saw"] = (bench, job, form) => bench.Steps.Saw(job.Id, form.Need("about"), form.Need("value"), [.. form.Many("when")], form.Number("watched", "time watched"), form.Number("sure", "chance"), form.Text("comes-and-goes") is not null),
        ["not-checked"] = NotChecked,
        ["tested"] = (bench, job, form) => bench.Steps.Tested(job.Id, form.Need("about"), form.Need("outcome")),
        ["round"] = (bench, job, form) => bench.Steps.Round(job.Id, form.Need("about"), form.ManyStarting("row:")),
        ["skip"] = (bench, job, form) => bench.Steps.Skip(job.Id, form.Need("about"), form.YesNo("cannot-tell") == true ? SkipReason.CannotTell : SkipReason.Skip),
        ["secured"] = (bench, job, form) => bench.Steps.Secured(job.Id, form.Need("about"), form.YesNo("done") == true),
        ["counter-closed"] = (bench, job, _) => bench.Steps.CloseCounter(job.Id),
        ["build"] = (bench, job, form) => bench.Steps.TellBuild(job.Id, form.ManyStarting("trait:").GroupBy(t => t.Split('=')[0], t => t.Split('=')[^1]).Select(t => $"{t.Key}={string.Join(',', t)}")),
        ["reading"] = (bench, job, form) => bench.Steps.Reading(job.Id, ReadingOf(form)),
        ["reset"] = (bench, job, form) => bench.Steps.Reset(job.Id, form.Need("about"), form.Word<Effect>("effect", "outcome")),
        ["held"] = (bench, job, form) => bench.Steps.Held(job.Id, form.Need("about"), form.YesNo("still") ?? throw new NotUnderstoodException("It was not said whether it held.", "Press one of the two buttons."), form.Text("after") ?? "power-loss"),
        ["fixed"] = (bench, job, form) => bench.Steps.Fixed(job.Id, form.Need("about"), form.Word<Effect>("effect", "outcome"), form.YesNo("tested-before")),
        ["swapped"] = (bench, job, form) => bench.Steps.Swapped(job.Id, form.Need("part"), form.Text("about"), form.Word<Effect>("effect", "outcome"), form.YesNo("old-back")),
        ["opened"] = (bench, job, form) => bench.Steps.Opened(job.Id, form.Need("about"), form.YesNo("shut") == true),
        ["taken-off"] = TakenOff,
        ["power"] = (bench, job, form) => bench.Steps.Powered(job.Id, form.Word<PowerStage>("stage", "power"), form.Text("current")),
        ["part"] = (bench, job, form) => bench.Steps.PartMoved(job.Id, PartOf(form)),
        ["erase"] = (bench, job, form) => bench.Steps.Agree(job.Id, job.Consent with { MayErase = true }),
        ["consent"] = (bench, job, form) => bench.Steps.Agree(job.Id, new(form.Number("limit", "spending limit"), form.YesNo("may-erase"), form.YesNo("originals-back"))),
        ["waiting"] = (bench, job, form) => bench.Steps.WaitFor(job.Id, form.Text("for") is { } what ? new(what, form.Date("until", bench.Clock.LocalTimeZone)) : null),
        ["undo"] = Undo,
        ["put-back"] = (bench, job, form) => bench.Steps.PutBack(job.Id, form.Index("about"), form.Need("entry")),
        ["new-finding"] = (bench, job, form) => bench.Listing.Finding(job.Id, form.Need("name"), [.. form.Lines("says")]),
        ["new-fault"] = (bench, job, form) => bench.Listing.Fault(job.Id, form.Need("name"), form.Text("part"), form.Text("fix")),
        ["new-device"] = (bench, job, form) => bench.Listing.Device(job.Id, form.Need("name"), form.Text("maker"), form.Need("class")),
        ["new-test"] = (bench, job, form) => bench.Listing.Test(job.Id, new(form.Need("name"), form.Need("reveals"))
        {
            Way = form.Word<TestWay>("way", "way of testing"),
            Minutes = form.Number("minutes", "time"),
            Power = form.Word<PowerStage>("power", "power"),
            Caution = form.Text("caution"),
            Steps = [.. form.Lines("steps")],
        }),
        ["close"] = (bench, job, form) => bench.Steps.Close(job.Id, CloseOf(form)),
        ["follow-up"] = (bench, job, form) => bench.Steps.FollowUp(job.Id, form.YesNo("came-back") ?? throw new NotUnderstoodException("It was not said how the machine does.", "Press one of the two buttons."), form.Text("note")),
    }.ToFrozenDictionary(StringComparer.Ordinal);

    private static StepResult TakenOff(LiveBench bench, Job job, Form form) => form.Photo("photo") is { } photo
        ? bench.Steps.TakenOff(job.Id, form.Need("what"), form.Text("where"), form.Text("note"), photo)
        : bench.Steps.TakenOff(job.Id, form.Need("what"), form.Text("where"), form.YesNo("back-on") == true, form.Text("note"));

    /// <summary>Takes back what was last said of a finding: heard in the complaint, or tapped.</summary>
    private static StepResult NotChecked(LiveBench bench, Job job, Form form)
    {
        var result = new StepResult { Job = job };
        for (var entry = job.Log.Length - 1; entry >= 0 && result.Refused is null && !job.Log[entry].IsAction(); entry--)
        {
            if (job.Log[entry] is Saw saw && saw.Finding == form.Need("about"))
                result = bench.Steps.Undo(job.Id, entry);
        }

        return result;
    }

    /// <summary>An entry is named by its place and its time: when somebody took another one back meanwhile, the place alone would name the wrong one.</summary>
    private static StepResult Undo(LiveBench bench, Job job, Form form) =>
        form.Index("about") is var entry && entry >= 0 && entry < job.Log.Length && job.Log[entry].At.ToString("O") == form.Need("at")
            ? bench.Steps.Undo(job.Id, entry)
            : bench.Steps.Undo(job.Id, -1);

    private static Read ReadingOf(Form form)
    {
        var (from, to, mode, power, load, value) = (form.Text("from"), form.Text("to"), form.Text("mode"), form.Text("power"), form.Text("load"), form.Need("value"));
        if (value.Length == 0)
            throw new NotUnderstoodException("No reading was given.", "Write what the meter showed, with its unit: 12 Ω, 4.9 V, OL.");
        var place = to is null ? from : $"{from} to {to}";
        return new(default, string.Join(", ", new[] { place, mode, power is null ? null : $"power {power}", load }.OfType<string>()) is { Length: > 0 } where ? $"{where}: {value}" : value)
        {
            From = from,
            To = to,
            Mode = mode,
            Power = power,
            Load = load,
            Value = value,
            Instrument = form.Text("instrument"),
        };
    }

    private static PartMoved PartOf(Form form) => new(default, form.Need("part"), form.Word<PartState>("state", "state of a part"))
    {
        Price = form.Number("price", "price"),
        Shipping = form.Number("shipping", "shipping"),
        LeadDays = form.Number("lead-days", "lead time"),
        From = form.Text("from"),
        DateCode = form.Text("date-code"),
    };

    private static CloseRequest CloseOf(Form form) => new()
    {
        Outcome = form.Word<JobOutcome>("outcome", "outcome"),
        Causes = [.. form.Many("cause").Select(fault => new FoundCause(fault, form.Word<Grade>($"grade-{fault}", "grade")))],
        NewCause = form.Text("new-cause"),
        NewCauseGrade = form.Text("new-cause-grade") is null ? Grade.HoldUnknown : form.Word<Grade>("new-cause-grade", "grade"),
        Damage = [.. form.Many("damage")],
        Minutes = form.Number("minutes", "time"),
        Lesson = form.Text("lesson"),
    };
}
