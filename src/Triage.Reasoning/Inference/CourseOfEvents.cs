using System.Collections.Immutable;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Inference;

/// <summary>
/// What the actions did to one root that started in one state. Three times matter for action k: right after it (its outcome
/// is seen), after power was lost (only when <see cref="ActionTaken.Held"/> is known), and epoch k + 1, which sees both.
/// </summary>
/// <param name="State">State at the start; 0 is good.</param>
/// <param name="Chance">P(this course | state).</param>
/// <param name="ActiveAfter">Whether the fault shows right after action k.</param>
/// <param name="Active">Whether it shows in epoch k.</param>
/// <param name="Present">Whether it is there in epoch k, silent or not.</param>
internal sealed record CourseOfEvents(
    int State, double Chance, ImmutableArray<bool> ActiveAfter, ImmutableArray<bool> Active, ImmutableArray<bool> Present)
{
    /// <summary>Still faulty after all actions. A fault that is silent until power is lost has not gone.</summary>
    public bool Remains => Present[^1];

    /// <summary>The course from a state that no action names.</summary>
    public static CourseOfEvents Untouched(int state, ImmutableArray<ActionTaken> actions) => Play(state, 1, actions, ImmutableDictionary<string, Fate>.Empty);

    /// <summary>
    /// Every course a root can take from one state. Each action that names the state has one of three fates for it, drawn once
    /// per action id: it fails (1 − Works), silences it until power is lost (Works · (1 − Holds)), or clears it for good
    /// (Works · Holds). A repeat has the same fate again, so it clears nothing more, yet silences again what came back with power.
    /// Silent faults are acted upon like others. A power loss wakes every silent fault, whichever action silenced it.
    /// </summary>
    public static IEnumerable<CourseOfEvents> From(int root, int state, ImmutableArray<ActionTaken> actions)
    {
        var fates = actions
            .DistinctBy(a => a.Id)
            .SelectMany(a => a.Clears.Where(c => c.Root == root && c.State == state).Select(c => (a.Id, c)))
            .ToArray();
        return fates.Length == 0
            ? [Untouched(state, actions)]
            : Draw(fates, 0, 1, ImmutableDictionary<string, Fate>.Empty)
                .Select(drawn => Play(state, drawn.Chance, actions, drawn.Fates))
                .GroupBy(c => string.Concat(c.ActiveAfter.Concat(c.Active).Concat(c.Present).Select(b => b ? '1' : '0')))
                .Select(same => same.First() with { Chance = same.Sum(c => c.Chance) });
    }

    private static IEnumerable<(double Chance, ImmutableDictionary<string, Fate> Fates)> Draw(
        (string Id, Clearing Clearing)[] actions, int next, double chance, ImmutableDictionary<string, Fate> drawn)
    {
        if (next == actions.Length)
        {
            return [(chance, drawn)];
        }

        var (id, clearing) = actions[next];
        (Fate Fate, double Chance)[] fates =
        [
            (Fate.Fails, 1 - clearing.Works),
            (Fate.Silences, clearing.Works * (1 - clearing.Holds)),
            (Fate.Clears, clearing.Works * clearing.Holds),
        ];
        return fates.Where(f => f.Chance > 0).SelectMany(f => Draw(actions, next + 1, chance * f.Chance, drawn.Add(id, f.Fate)));
    }

    private static CourseOfEvents Play(
        int state, double chance, ImmutableArray<ActionTaken> actions, ImmutableDictionary<string, Fate> fates)
    {
        bool present = state != 0, active = present;
        List<bool> after = [], epochs = [active], there = [present];
        foreach (var action in actions)
        {
            var fate = fates.GetValueOrDefault(action.Id, Fate.Fails);
            present &= fate != Fate.Clears;
            active &= fate == Fate.Fails;
            after.Add(active);
            active = action.Held is null ? active : present;
            epochs.Add(active);
            there.Add(present);
        }

        return new(state, chance, [.. after], [.. epochs], [.. there]);
    }

    private enum Fate
    {
        Fails,
        Silences,
        Clears,
    }
}
