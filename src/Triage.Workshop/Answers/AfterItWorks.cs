using System.Collections.Immutable;
using System.Globalization;
using Triage.Notes.Kinds;
using Triage.Reasoning.Networks;
using Triage.Workshop.Answers.Wording;
using Triage.Workshop.Chances;
using Triage.Workshop.Jobs;

namespace Triage.Workshop.Answers;

/// <summary>
/// While a machine works there is nothing to look for: what comes next is to see whether it lasts, under the conditions that
/// showed the fault, and then to close the job.
/// </summary>
internal sealed class AfterItWorks(Job job, Reasoned reasoned, WordsFor words)
{
    /// <summary>Off and on again; looking for every sign again (common practice, no source).</summary>
    private const double PowerLossMinutes = 5, ProofMinutes = 5;

    /// <summary>Longest soak at the bench, in minutes.</summary>
    private const double LongestSoak = 120;

    /// <summary>Null while the machine does not work.</summary>
    public NextBestStep? Step() => MachineWorks.LastAction(job, reasoned.Evidence) switch
    {
        null or { Works: false } => null,
        { StillWorks: null } last => Recheck(last.Action, last.IsReset),
        { StillWorks: true } => Close(),
        { StillWorks: false } => null,
    };

    private NextBestStep Recheck(string action, bool isReset)
    {
        var holds = ChanceHolds();
        var card = isReset ? PowerAway(action) : Proof(action);
        return card with
        {
            Outcomes =
            [
                new("still-works", "still works", holds, "then: close the job"),
                new("gone", "the fault is back", 1 - holds, "then: the causes are ranked again"),
            ],
        };
    }

    private NextBestStep PowerAway(string action) =>
        Card(action, StepKind.Provoke, "Take the power away: does it still work afterwards?",
            ["Take all power away: mains plug, adapter and cells, whatever it has.", "Wait some minutes, longer than a charge lasts.", "Power on, and look for the same signs again.", .. SignsAgain()]) with
        {
            Minutes = PowerLossMinutes,
            Why = "A reset that lasts only until power is lost points at what should keep the memory alive.",
        };

    /// <summary>As the fix and the class say, under the conditions that showed the fault.</summary>
    private NextBestStep Proof(string fix)
    {
        var scope = reasoned.Network.Scope;
        var proof = (reasoned.Actions.Fixes.GetValueOrDefault(fix)?.Proof ?? []).Concat(scope.Class.Proof).Where(p => scope.Fits(p.Build)).ToList();
        var soak = Soak(fix);
        return Card(fix, StepKind.Recheck, "Prove the mend: the same signs, under the conditions that showed them", [.. SignsAgain(), .. proof.Select(p => p.Say), .. soak is { } said ? [said.Say] : Array.Empty<string>()]) with
        {
            Cautions = [.. proof.SelectMany(p => p.Effort.Cautions).Distinct()],
            Minutes = Math.Max(ProofMinutes, proof.Sum(p => p.Effort.Minutes)),
            WaitMinutes = Math.Max(soak?.Minutes ?? 0, proof.Select(p => p.Effort.WaitMinutes).DefaultIfEmpty().Max()),
            Why = "It works now; whether it lasts is known only after the conditions that showed the fault.",
        };
    }

    /// <summary>
    /// What comes and goes is watched for three times its mean gap: then it is still there in one case of twenty (Hanley and Lippman-Hand 1983),
    /// at the bench for two hours at most, provoked; the rest is asked of the owner later.
    /// </summary>
    private (string Say, double Minutes)? Soak(string fix)
    {
        var gap = reasoned.Network.Scope.Faults.Where(f => f.Mends.Any(m => m.Id == fix)).SelectMany(f => f.Shows).Where(s => reasoned.Evidence.Last(s.Finding, reasoned.Network) > 0).Max(s => s.EveryMinutes);
        if (gap is not { } every)
            return null;
        var needed = 3 * every;
        var here = Math.Min(needed, LongestSoak);
        var words = string.Create(CultureInfo.InvariantCulture, $"Let it run for {here:0} minutes as it ran when it failed; warm it, cool it, tap it and flex it meanwhile.");
        return (needed > LongestSoak ? words + " It came seldom: ask the owner again in a week or two." : words, here);
    }

    private static NextBestStep Close() => Card("close", StepKind.Close, "Close the job: what was it, and how sure?", []) with
    {
        Why = "It works and it held. A closed job makes the next one faster.",
    };

    /// <summary>The findings of the machine as it came in, as a checklist.</summary>
    private IEnumerable<string> SignsAgain() =>
        job.Log.AsItCameIn().OfType<Saw>()
            .Select(s => $"Came in with: {words.Entry(s)}. And now?");

    /// <summary>P(it still works after power loss | everything recorded): the evidence with that outcome over the evidence without; 1 where no note knows what made it work.</summary>
    private double ChanceHolds()
    {
        var evidence = reasoned.Evidence.Evidence;
        if (evidence.Actions is not [.., { Outcome: ActionOutcome.Works }])
            return 1;
        var last = evidence.Actions.Length - 1;
        var held = evidence with { Actions = evidence.Actions.SetItem(last, evidence.Actions[last] with { Held = true }) };
        return reasoned.ChanceOf(reasoned.Evidence with { Evidence = held });
    }

    private static NextBestStep Card(string id, StepKind kind, string name, ImmutableArray<string> steps) => new()
    {
        Id = id,
        Kind = kind,
        Name = name,
        Cautions = [],
        Steps = steps,
        Opens = [],
        Tools = [],
        Price = 0,
        Minutes = 0,
        ExpectedCost = 0,
        Outcomes = [],
        Why = "",
        Others = [],
        Forbidden = [],
    };
}
