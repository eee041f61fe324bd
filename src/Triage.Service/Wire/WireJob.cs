using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Workshop;
using Triage.Workshop.Jobs;

namespace Triage.Service.Wire;

/// <summary>A job as programs see it. The owner's name and the serial number stay on the bench.</summary>
internal sealed record WireJob
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    public required string Machine { get; init; }

    public string? Device { get; init; }

    public required string Complaint { get; init; }

    public DateTimeOffset? Opened { get; init; }

    public DateTimeOffset? Closed { get; init; }

    public JobOutcome? Outcome { get; init; }

    public required WireConsent Consent { get; init; }

    public WireWaiting? WaitsFor { get; init; }

    public required ImmutableArray<WireEntry> Log { get; init; }

    /// <summary>What came off and is not back on, the last one off first: the order in which it goes back.</summary>
    public required ImmutableArray<WireLoose> Loose { get; init; }

    /// <summary>What is worth a look by the way, while anything is open.</summary>
    public required ImmutableArray<string> WhileOpen { get; init; }

    public required ImmutableArray<WireCauseFound> Causes { get; init; }

    public required ImmutableArray<string> Damage { get; init; }

    public double? Minutes { get; init; }

    public required ImmutableArray<WireFollowUp> FollowUps { get; init; }

    public static WireJob Of(Job job, Bench bench) => new()
    {
        Id = job.Id,
        Name = job.Name,
        Machine = bench.Notes.Find<Device>(job.Device)?.Name ?? job.Unit ?? bench.Notes.Find<DeviceClass>(job.Class)?.Name ?? "",
        Device = job.Device,
        Complaint = job.Complaint,
        Opened = job.Opened,
        Closed = job.Closed,
        Outcome = job.Outcome,
        Consent = new(job.Consent.SpendingLimit, job.Consent.MayErase, job.Consent.OriginalsBack),
        WaitsFor = job.WaitsFor is { } waiting ? new(waiting.For, waiting.Until) : null,
        Log = [.. job.Log.Select((e, i) => new WireEntry(i, e.At, bench.InWords(job, e)))],
        WhileOpen = Workshop.Steps.WhileOpen.Of(job, bench),
        Loose = [.. LooseThing.Of(job.Log).Where(t => !t.BackOn).Reverse().Select(t => new WireLoose(t.Off.What, t.Off.Where, t.LeftOver))],
        Causes = [.. job.Causes.Select(c => new WireCauseFound(c.Fault, c.Grade))],
        Damage = job.Damage,
        Minutes = job.Minutes,
        FollowUps = [.. job.FollowUps.Select(f => new WireFollowUp(f.CameBack, f.Note))],
    };
}

/// <param name="Entry">Index by which it is taken back.</param>
internal sealed record WireEntry(int Entry, DateTimeOffset At, string Words);

/// <param name="Where">Where it lies.</param>
/// <param name="LeftOver">What was open when it came off is shut now.</param>
internal sealed record WireLoose(string What, string? Where, bool LeftOver);

internal sealed record WireConsent(double? SpendingLimit = null, bool? MayErase = null, bool? OriginalsBack = null);

internal sealed record WireWaiting(string For, DateTimeOffset? Until = null);

/// <param name="Fault">Fault id.</param>
internal sealed record WireCauseFound(string Fault, Grade Grade);

/// <param name="CameBack">True: the fault is back; false: heard of as good.</param>
internal sealed record WireFollowUp(bool CameBack, string? Note = null);
