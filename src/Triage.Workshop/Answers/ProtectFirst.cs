using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Workshop.Chances;

namespace Triage.Workshop.Answers;

/// <summary>What is done before anything is looked for, so that nothing is lost and nothing gets worse.</summary>
internal sealed class ProtectFirst(Job job, Reasoned reasoned)
{
    /// <summary>A build rarer than this, where nobody has told, is not worth securing against (common practice, no source).</summary>
    private const double LikelyBuild = 0.3;

    /// <summary>Protect steps of the class that this job calls for and that nobody has done or passed over yet, in the order of the note.</summary>
    public ImmutableArray<Protect> Due()
    {
        var settled = job.Log.Select(e => e switch { Secured s => s.Protect, Skipped s => s.Step, _ => null }).OfType<string>().ToHashSet(StringComparer.Ordinal);
        var scope = reasoned.Network.Scope;
        return [.. scope.Class.Protect.Where(p => scope.Chance(p.Build) >= LikelyBuild && !settled.Contains(p.Id) && (p.When.IsEmpty || p.When.Any(CallsForIt)))];
    }

    public NextBestStep? Step() => Due() is [var first, ..] ? Card(first) : null;

    private bool CallsForIt(Occasion occasion) => occasion switch
    {
        Noticed noticed => reasoned.Evidence.Last(noticed.Finding, reasoned.Network) is { } value && (noticed.Value is null ? value != 0 : ValueOf(noticed.Finding, value) == noticed.Value),
        Feared feared => reasoned.Now(feared.Fault) > feared.Over,
        _ => false,
    };

    private string ValueOf(string finding, int value) =>
        reasoned.Network.Network.Findings[reasoned.Network.Findings[finding]].Values[value];

    private static NextBestStep Card(Protect protect) => new()
    {
        Id = protect.Id,
        Kind = StepKind.Protect,
        Name = protect.Name,
        Cautions = protect.Effort.Cautions,
        Steps = protect.Steps,
        Opens = [],
        Tools = protect.Effort.Tools,
        Price = 0,
        Minutes = protect.Effort.Minutes,
        WaitMinutes = protect.Effort.WaitMinutes,
        ExpectedCost = 0,
        Outcomes = [new("done", "it is done", 1, "then: the next step"), new("not-possible", "it cannot be done", 0, "then: the next step")],
        Why = protect.Loses is { } loses ? $"Otherwise this may be lost: {loses}." : "It keeps the fault from getting worse while you look for it.",
        Others = [],
        Forbidden = [],
    };
}
