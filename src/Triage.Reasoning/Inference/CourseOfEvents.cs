using System.Collections.Immutable;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Inference;

/// <summary>
/// What the actions did to one root that started in one state. Three times matter for action k: right after it (its outcome
/// is seen), after power was lost (only when <see cref="ActionTaken.Held"/> is known), and epoch k + 1, which sees both.
/// </summary>
/// <param name="State">State at the start; 0 is good.</param>
/// <param name="Chance">P(this course | state).</param>
/// <param name="ShowsAfter">State that shows right after action k; 0 when nothing does.</param>
/// <param name="Shows">State that shows in epoch k.</param>
/// <param name="There">State that is there in epoch k, silent or not.</param>
internal sealed record CourseOfEvents(
    int State, double Chance, ImmutableArray<int> ShowsAfter, ImmutableArray<int> Shows, ImmutableArray<int> There)
{
    /// <summary>Still faulty after all actions. A fault that is silent until power is lost has not gone.</summary>
    public bool Remains => Left != 0;

    /// <summary>State that is left after all actions.</summary>
    public int Left => There[^1];

    /// <summary>The course from a state that no action names.</summary>
    public static CourseOfEvents Untouched(int state, ImmutableArray<ActionTaken> actions) => new(state, 1, [.. actions.Select(_ => state)], [state, .. actions.Select(_ => state)], [state, .. actions.Select(_ => state)]);

    /// <summary>
    /// Every course a root can take from one state. Each action that names the state it is in then has one of three fates, drawn once
    /// per action id: it fails (1 − Works), silences what it mends until power is lost (Works · (1 − Holds)), or clears it for good
    /// (Works · Holds); another state may be left. A repeat has the same fate again, so it clears nothing more, yet silences again what came back with power.
    /// Silent faults are acted upon like others. A power loss wakes every silent fault, whichever action silenced it.
    /// </summary>
    public static IEnumerable<CourseOfEvents> From(int root, int state, ImmutableArray<ActionTaken> actions) =>
        Continue(root, new(state, 1, [], [state], [state]), actions, ImmutableDictionary<string, Fate>.Empty)
            .GroupBy(c => string.Join(' ', c.ShowsAfter.Concat(c.Shows).Concat(c.There)))
            .Select(same => same.First() with { Chance = same.Sum(c => c.Chance) });

    private static IEnumerable<CourseOfEvents> Continue(
        int root, CourseOfEvents soFar, ImmutableArray<ActionTaken> actions, ImmutableDictionary<string, Fate> fates)
    {
        if (soFar.ShowsAfter.Length == actions.Length)
        {
            return [soFar];
        }

        var action = actions[soFar.ShowsAfter.Length];
        if (Named(soFar.There[^1]) is not { } clearing)
        {
            return Continue(root, soFar.Then(soFar.There[^1], soFar.Shows[^1], action), actions, fates);
        }

        return Fates(clearing, fates.TryGetValue(action.Id, out var known) ? known : null)
            .SelectMany(f => Continue(root, Suffer(f.Fate) with { Chance = soFar.Chance * f.Chance }, actions, fates.SetItem(action.Id, f.Fate)));

        // what shows loses the same faults as what is there
        CourseOfEvents Suffer(Fate fate)
        {
            var (there, shows) = (soFar.There[^1], soFar.Shows[^1]);
            return fate == Fate.Fails ? soFar.Then(there, shows, action)
                : soFar.Then(fate == Fate.Clears ? clearing.Leaves : there, shows == there ? clearing.Leaves : Named(shows)?.Leaves ?? shows, action);
        }

        Clearing? Named(int now) => actions.First(a => a.Id == action.Id).Clears.FirstOrDefault(c => c.Root == root && c.State == now);
    }

    private static IEnumerable<(Fate Fate, double Chance)> Fates(Clearing clearing, Fate? known)
    {
        if (known is { } again)
        {
            return [(again, 1)];
        }

        (Fate, double Chance)[] fates =
        [
            (Fate.Fails, 1 - clearing.Works),
            (Fate.Silences, clearing.Works * (1 - clearing.Holds)),
            (Fate.Clears, clearing.Works * clearing.Holds),
        ];
        return fates.Where(f => f.Chance > 0);
    }

    private CourseOfEvents Then(int there, int shows, ActionTaken action) => this with
    {
        ShowsAfter = ShowsAfter.Add(shows),
        Shows = Shows.Add(action.Held is null ? shows : there),
        There = There.Add(there),
    };

    private enum Fate
    {
        Fails,
        Silences,
        Clears,
    }
}
