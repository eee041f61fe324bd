using Triage.Workshop.Chances;

namespace Triage.Workshop.Answers.Wording;

/// <summary>What needs an access step that this machine's tree does not have, in words: it is planned as if it lay behind the outermost cover.</summary>
internal static class StepsNotThere
{
    public static IEnumerable<string> Of(Reasoned reasoned, WordsFor words)
    {
        var scope = reasoned.Network.Scope;
        var needs = scope.Tests.Select(t => (t.Name, t.Effort)).Concat(scope.Resets.Select(r => (r.Name, r.Effort)))
            .Concat(reasoned.Actions.Fixes.Values.Select(m => (Name: m.Name!, m.Effort)));
        return needs.Where(n => n.Effort.Access is { } step && !scope.Has(step))
            .GroupBy(n => (Step: n.Effort.Access!, Cover: scope.Behind(n.Effort)))
            .Select(g => $"No way is noted to “{g.Key.Step}” in {scope.Name}, needed for: {string.Join(", ", g.Select(n => n.Name))}. "
                + (g.Key.Cover is { } cover ? $"Counted as lying behind: {words.Step(cover)}." : "Counted as open to hand."));
    }
}
