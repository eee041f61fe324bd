using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Workshop;
using Triage.Workshop.Answers;
using Triage.Workshop.Jobs;
using Triage.Workshop.Knowledge;

namespace Triage.Service.Shown;

/// <summary>Everything that the page of one job shows, of one snapshot.</summary>
public sealed record JobView(Bench Now, Job Job)
{
    /// <summary>Which page of the job it is, as below its address; empty for the main page.</summary>
    public string Page { get; init; } = "";

    /// <summary>What of that page is meant; null for all of it.</summary>
    public string? Meant => Page.Split('/', 2) is [_, { Length: > 0 } meant] ? meant : null;

    /// <summary>State of the note that the forms of this page were made from.</summary>
    public string Version { get; } = JobVersion.Of(Job);

    public DeviceScope? Scope { get; init; }

    /// <summary>What was taken back just now, and the index it had; null when nothing was.</summary>
    internal (int At, LogEntry Entry)? TakenBack { get; init; }

    /// <summary>What is to be known of the step just done.</summary>
    public ImmutableArray<string> Remarks { get; init; } = [];

    /// <summary>Null for a closed job, and when nobody knows the machine.</summary>
    public Answer? Answer { get; init; }

    public Refusal? NoAnswer { get; init; }

    /// <summary>Causes offered when closing, likeliest first.</summary>
    public ImmutableArray<RankedCause> Choices { get; init; } = [];

    /// <summary>The last thing that worked and has not fallen back: how it did since is asked.</summary>
    public string? MayHaveFallenBack { get; init; }

    public string Machine => Scope?.Name ?? Job.Unit ?? "Machine not named";

    internal static JobView Of(Bench now, Job job, KnownAnswers answers, string page)
    {
        var asked = job.IsOpen ? answers.For(now, job) : null;
        return new(now, job)
        {
            Page = page,
            Scope = now.ScopeOf(job),
            Answer = asked?.Answer,
            NoAnswer = asked?.Refused,
            Choices = asked?.Answer is { } answer ? CloseChoices.Of(now, job, answer) : [],
            MayHaveFallenBack = LastThatWorked(job),
        };
    }

    public string Spoken(LogEntry entry) => Now.InWords(Job, entry);

    public string NameOf(string action) =>
        Now.Notes.Find<Note>(action)?.Name
        ?? Now.Notes.Mend(action)?.Name
        ?? action;

    private static string? LastThatWorked(Job job)
    {
        var worked = job.Log.LastOrDefault(e => e.Action() is not null && e.EffectSeen() == Effect.Works);
        var action = worked?.Action();
        var since = job.Log.Reverse().TakeWhile(e => e != worked).OfType<Held>().FirstOrDefault(h => h.Action == action);
        return since is { StillWorks: false } ? null : action;
    }
}
