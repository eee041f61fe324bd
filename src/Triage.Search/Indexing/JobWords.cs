using System.Collections.Immutable;
using Triage.Notes.Kinds;
using static Triage.Search.Indexing.NoteWords;

namespace Triage.Search.Indexing;

/// <summary>The words of a job. Owner and serial number are never indexed.</summary>
internal sealed class JobWords(Func<string, Note?> find)
{
    public IndexedNote Of(IndexedNote common, Job job)
    {
        var device = job.Device is null ? null : find(job.Device) as Device;
        var saw = job.Log.OfType<Saw>().ToList();
        return common with
        {
            Names = [.. common.Names, .. Said(device?.Name, device?.Maker, device?.Model, job.Unit), .. device?.Also ?? []],
            Says = [.. saw.Select(s => ValueName(find, s.Finding, s.Value))],
            Complaint = Said(job.Complaint),
            Causes = [.. job.Causes.Select(c => Name(c.Fault)), .. job.Damage.Select(Name), .. FixIds(job).Select(id => FixName(job, id))],
            Log = [.. job.Log.SelectMany(e => Words(job, e)), .. job.History],
            DeviceIds = [.. Said(job.Device, device?.Class ?? job.Class)],
            FindingIds = [.. saw.SelectMany(s => Said(s.Finding, $"{s.Finding}={s.Value}")).Distinct()],
            CauseIds = [.. job.Causes.Select(c => c.Fault).Distinct()],
            Outcome = job.Outcome is { } outcome ? Written.As(outcome) : "open",
            Fix = FixIds(job) is [.., var last] ? FixName(job, last) : null,
            Date = job.Closed ?? job.Opened,
            Hold = HoldOf(job),
        };
    }

    /// <summary>Fixes that worked, oldest first.</summary>
    private static ImmutableArray<string> FixIds(Job job) =>
    [
        .. job.Log.SelectMany(e => e switch
        {
            Fixed { Effect: Effect.Works } f => Said(f.Fix),
            Swapped { Effect: Effect.Works } s => Said(s.Fix ?? s.Part),
            ResetTried { Effect: Effect.Works } r => Said(r.Reset),
            _ => [],
        }),
    ];

    private static Hold HoldOf(Job job)
    {
        if (job.Outcome is not JobOutcome.Mended || job.FollowUps is [.., { CameBack: true }])
        {
            return Hold.NotMended;
        }

        return job.FollowUps.Any(f => !f.CameBack) || job.Log.OfType<Held>().LastOrDefault() is { StillWorks: true }
            ? Hold.Held
            : Hold.Mended;
    }

    private ImmutableArray<string> Words(Job job, LogEntry entry) => entry switch
    {
        Saw s => Said(s.Words, s.Note),
        Tested t => Said(Name(t.Test), OutcomeName(t), t.Note),
        Read r => Said(r.Text, r.From, r.To, r.Note),
        ResetTried r => Said(Name(r.Reset), r.Note),
        TakenOff t => Said(t.What, t.Where, t.Note),
        PartMoved p => Said(Name(p.Part), p.DateCode, p.Note),
        Swapped s => Said(s.Part, s.Note),
        Secured s => Said(ProtectName(job, s.Protect), s.Note),
        RoundDone r => Said(Name(r.Round), r.Note),
        QuickLine q => Said(q.Text, q.Note),
        _ => Said(entry.Note),
    };

    private string? OutcomeName(Tested tested)
    {
        var test = find(tested.Test) as Test;
        return test?.Outcomes.FirstOrDefault(o => o.Id == tested.Outcome)?.Name
            ?? (test?.Reveals is { } finding ? ValueName(find, finding, tested.Outcome) : tested.Outcome);
    }

    private string ProtectName(Job job, string protect)
    {
        var machine = (job.Device is { } device ? (find(device) as Device)?.Class : null) ?? job.Class;
        return (machine is null ? null : find(machine) as DeviceClass)?.Protect.FirstOrDefault(p => p.Id == protect)?.Name ?? protect;
    }

    private string FixName(Job job, string fix) =>
        job.Causes.Select(c => find(c.Fault)).OfType<Fault>().SelectMany(f => f.Mends).FirstOrDefault(m => m.Id == fix)?.Name
        ?? find(fix)?.Name
        ?? fix.Replace('-', ' ');

    private string Name(string id) => find(id)?.Name ?? id;
}
