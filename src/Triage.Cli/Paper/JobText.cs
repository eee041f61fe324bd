using Spectre.Console;
using Triage.Cli.Typed;
using Triage.Notes.Kinds;
using Triage.Workshop;
using Triage.Workshop.Jobs;
using Triage.Workshop.Knowledge;
using Triage.Workshop.Steps;

namespace Triage.Cli.Paper;

/// <summary>A job: what came in, and everything recorded with its number for taking it back.</summary>
internal static class JobText
{
    public static void Write(Sheet paper, Bench bench, Job job)
    {
        paper.Title($"{job.Id} {job.Name}");
        Fields(paper, bench, job);
        paper.Heading("Time line");
        for (var i = 0; i < job.Log.Length; i++)
            Entry(paper, bench, job, i);
        foreach (var thing in LooseThing.Of(job.Log).Where(t => !t.BackOn).Reverse())
            paper.Item("off", $"{thing.Off.What}{(thing.Off.Where is { } where ? $", lies in {where}" : "")}{(thing.LeftOver ? ": left over, what was open is shut" : "")}", 4, thing.LeftOver ? Sheet.Warning : Style.Plain);
        foreach (var look in job.IsOpen ? WhileOpen.Of(job, bench) : [])
            paper.Item("while open", look);
        foreach (var heard in job.FollowUps)
            paper.Item($"    {Amounts.Date(heard.On)}", $"{(heard.CameBack ? "came back" : "heard of as good")}{(heard.Note is null ? "" : $": {heard.Note}")}");
    }

    /// <summary>What it waits for, in words.</summary>
    public static string WaitsFor(Job job) =>
        job.WaitsFor is { } waits ? $"{waits.For}{(waits.Until is { } until ? $", until {Amounts.Date(until)}" : "")}" : "the bench";

    /// <summary>What the owner agreed to, in words.</summary>
    public static string Agreed(Consent consent, BenchSettings settings) => string.Join(", ", new[]
    {
        consent.SpendingLimit is { } limit ? $"spend up to {Amounts.Money(limit, settings)}" : "no spending limit named",
        consent.MayErase switch { true => "stored data may go", false => "stored data must stay", null => "not asked whether stored data may go" },
        consent.OriginalsBack switch { true => "wants old parts back", false => "old parts not wanted", null => null },
    }.OfType<string>());

    private static void Fields(Sheet paper, Bench bench, Job job)
    {
        Field(paper, "machine", bench.Notes.Find<Device>(job.Device)?.Name ?? job.Unit ?? bench.Notes.Find<DeviceClass>(job.Class)?.Name);
        Field(paper, "complaint", job.Complaint);
        Field(paper, "history", job.History.IsEmpty ? null : string.Join("; ", job.History));
        Field(paper, "owner", job.Owner);
        Field(paper, "serial", job.Serial);
        Field(paper, "technician", job.Technician);
        Field(paper, "taken in", job.Opened is { } opened ? Amounts.Time(opened) : null);
        Field(paper, "worth", job.Worth is { } worth ? Amounts.Money(worth, bench.Settings) : null);
        Field(paper, "consent", Agreed(job.Consent, bench.Settings));
        if (job.IsOpen)
            Field(paper, "waits for", WaitsFor(job));
        Field(paper, "ended", job.Outcome is { } outcome ? $"{Inputs.Word(outcome)}{(job.Closed is { } closed ? $" on {Amounts.Date(closed)}" : "")}{(job.Minutes is { } minutes ? $" after {Amounts.Minutes(minutes)}" : "")}" : null);
        foreach (var cause in job.Causes)
            Field(paper, "cause", $"{bench.Notes.Find<Fault>(cause.Fault)?.Name ?? cause.Fault} ({Inputs.Word(cause.Grade)})");
        foreach (var damage in job.Damage)
            Field(paper, "damage", bench.Notes.Find<Fault>(damage)?.Name ?? damage);
    }

    private static void Field(Sheet paper, string label, string? text)
    {
        if (!string.IsNullOrWhiteSpace(text))
            paper.Field(label, text);
    }

    private static void Entry(Sheet paper, Bench bench, Job job, int index)
    {
        var entry = job.Log[index];
        var said = entry is Saw { Words: { } words } ? $", from “{words}”" : "";
        var note = entry.Note is null ? "" : $" ({entry.Note})";
        paper.Item($"{index,3} {Amounts.Time(entry.At)}", bench.InWords(job, entry) + said + note, 0);
        if (entry is Read read && bench.VerdictOn(job, read) is { } verdict)
            paper.Item(verdict.NotUsed is null ? "says" : "not weighed:", verdict.NotUsed ?? verdict.Words, 4);
    }
}
