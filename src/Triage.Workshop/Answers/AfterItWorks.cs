using System.Collections.Immutable;
using Triage.Notes.Kinds;
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
    /// <summary>Off and on again; a soak without power.</summary>
    private const double PowerLossMinutes = 5, SoakMinutes = 15;

    /// <summary>Null while the machine does not work.</summary>
    public NextBestStep? Step() => MachineWorks.LastAction(job) switch
    {
        null or { Works: false } => null,
        { StillWorks: null } last => Recheck(last.Action, last.IsReset),
        { StillWorks: true } => Close(),
        { StillWorks: false } => null,
    };

    private NextBestStep Recheck(string action, bool isReset)
    {
        var holds = ChanceHolds();
        ImmutableArray<string> steps = isReset
            ? ["Take all power away: adapter out, cells out.", "Wait some minutes, longer than a charge lasts.", "Power on, and look for the same signs again.", .. SignsAgain()]
            : [.. SignsAgain(), "Leave it without power for as long as it stood idle before it failed, then try again."];
        return Card(action, isReset ? StepKind.Provoke : StepKind.Recheck, isReset ? "Take the power away: does it still work afterwards?" : "Re-check what was seen, then a soak without power", steps) with
        {
            Minutes = isReset ? PowerLossMinutes : SoakMinutes,
            Outcomes =
            [
                new("still-works", "still works", holds, "then: close the job"),
                new("gone", "the fault is back", 1 - holds, "then: the causes are ranked again"),
            ],
            Why = isReset
                ? "A reset that lasts only until power is lost points at what should keep the memory alive."
                : "It works now; whether it lasts is known only after the conditions that showed the fault.",
        };
    }

    private static NextBestStep Close() => Card("close", StepKind.Close, "Close the job: what was it, and how sure?", []) with
    {
        Why = "It works and it held. A closed job makes the next one faster.",
    };

    /// <summary>The findings of the machine as it came in, as a checklist.</summary>
    private IEnumerable<string> SignsAgain() =>
        job.Log.AsItCameIn().OfType<Saw>()
            .Select(s => $"Came in with: {words.Entry(s)}. And now?");

    /// <summary>P(it still works after power loss | everything recorded): the evidence with that outcome over the evidence without.</summary>
    private double ChanceHolds()
    {
        var evidence = reasoned.Evidence.Evidence;
        if (evidence.Actions.IsEmpty)
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
