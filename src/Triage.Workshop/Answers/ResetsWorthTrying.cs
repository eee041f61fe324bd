using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Networks;
using Triage.Workshop.Answers.Wording;
using Triage.Workshop.Chances;
using Triage.Workshop.Model;

namespace Triage.Workshop.Answers;

/// <summary>Resets that have a chance, best first, each with what its outcome would tell.</summary>
internal sealed class ResetsWorthTrying(BenchKnowledge known, Job job, Reasoned reasoned, HardRules rules)
{
    /// <summary>A reset with less chance than this is not worth the reader's time.</summary>
    private const double LeastChance = 0.01;

    public ImmutableArray<ResetWorthTrying> Of(HypothesisSet hypotheses)
    {
        var tried = job.Log.OfType<ResetTried>().Select(r => reasoned.Actions.GeneralForm(r.Reset)).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. reasoned.Network.Scope.Resets
                .Where(r => !tried.Contains(reasoned.Actions.GeneralForm(r.Id)))
                .Select(r => Card(r, reasoned.Actions.Clearings(r.Id) ?? [], hypotheses))
                .Where(r => r.ChanceWorks >= LeastChance)
                .OrderByDescending(r => r.ChanceWorks / Math.Max(1, r.Minutes)),
        ];
    }

    private ResetWorthTrying Card(Reset reset, ImmutableArray<Clearing> clears, HypothesisSet hypotheses) => new()
    {
        Reset = reset.Id,
        Name = reset.Name,
        Cautions = MachineHazards.Met(reasoned.Network.Scope, reset.Effort, reset.Effort.Cautions),
        Before = [.. ColdChecks(reset), .. reset.Before],
        Steps = reset.Steps,
        Erases = reset.Erases,
        Blocked = rules.Forbids(reset) ?? rules.NotYet(reset),
        Minutes = reset.Effort.Minutes,
        ChanceWorks = Chance(hypotheses, clears, c => c.Works),
        ChanceHolds = Chance(hypotheses, clears, c => c.Works * c.Holds),
        Tells = Tells(reset, clears),
    };

    private IEnumerable<string> ColdChecks(Reset reset) =>
        rules.After(reset.Effort)
            .Where(id => job.Log.OfType<Tested>().All(t => t.Test != id))
            .Select(id => known.Notes.Find<Test>(id))
            .OfType<Test>()
            .Where(t => reasoned.Network.Scope.Tests.Any(offered => offered.Id == t.Id) && !Known(t))
            .Select(t => $"Cold, before power goes on: {Sentence.Lower(t.Name)}.");

    private bool Known(Test test) =>
        test.Reveals is { } finding && reasoned.Network.Findings.TryGetValue(finding, out var index)
        && reasoned.Evidence.Evidence.Observations.Any(o => o.Finding == index);

    private static double Chance(HypothesisSet hypotheses, ImmutableArray<Clearing> clears, Func<Clearing, double> chance)
    {
        var per = clears.Where(c => c.Leaves == 0).ToDictionary(c => (c.Root, c.State), chance);
        return hypotheses.Listed.Where(h => !h.Faulty.IsEmpty)
            .Sum(h => h.Probability * h.Faulty.Aggregate(1.0, (p, f) => p * per.GetValueOrDefault((f.Root, f.State))));
    }

    private string Tells(Reset reset, ImmutableArray<Clearing> clears)
    {
        var until = LeadingCause(reset, clears, ActionOutcome.Works, held: false);
        var nothing = LeadingCause(reset, clears, ActionOutcome.StillFaulty, held: null);
        return string.Join(" ", new[]
        {
            until is { } u ? $"Works but is gone after power loss: most likely {u}." : null,
            nothing is { } n ? $"No difference: most likely {n}." : null,
        }.OfType<string>());
    }

    /// <summary>The first cause if the reset had this outcome; null when it cannot have it.</summary>
    private string? LeadingCause(Reset reset, ImmutableArray<Clearing> clears, ActionOutcome outcome, bool? held)
    {
        var evidence = reasoned.Evidence.Evidence;
        var taken = new ActionTaken(reasoned.Actions.GeneralForm(reset.Id), clears, outcome) { Held = held };
        var then = reasoned.With(reasoned.Evidence with { Evidence = evidence with { Actions = evidence.Actions.Add(taken) } });
        if (then.Posterior.Contradiction)
            return null;
        var first = reasoned.Network.Faults.Keys.OrderByDescending(then.Now).ThenBy(f => f, StringComparer.Ordinal).First();
        return $"{WordsFor.CauseName(first, known.Notes)} ({then.Now(first):P0})";
    }
}
