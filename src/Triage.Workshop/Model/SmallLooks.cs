using Triage.Notes.Kinds;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Model;

/// <summary>
/// Looks, tries and listens that take no more than a moment with the case shut. Nobody makes them one by one: they are offered as one list.
/// </summary>
internal static class SmallLooks
{
    /// <summary>Minutes that one takes at most, minutes that each adds to a list, rows of a list (common practice, no source).</summary>
    public const double Longest = 2, MinutesEach = 0.5;

    public const int Most = 5;

    /// <summary>Ids of the findings of this machine that are small to look for and not known yet.</summary>
    public static IEnumerable<string> Of(DeviceScope scope, StepsDone done, HardRules rules)
    {
        var tested = scope.Tests.Where(t => t.Round.IsEmpty && IsSmall(t) && t.Reveals is not null && !done.Has(t.Id) && rules.After(t.Effort).IsEmpty && rules.Forbids(t.Effort) is null).Select(t => t.Reveals!);
        var seen = scope.Questions.Where(f => !scope.Class.Counter.Contains(f.Id)).Select(f => f.Id);
        return tested.Concat(seen).Distinct(StringComparer.Ordinal).Where(f => done.CanShow(f) && !done.Knows(f) && !done.Has(f));
    }

    public static bool IsSmall(Test test) =>
        test.Way is TestWay.Look or TestWay.Listen or TestWay.Provoke && test.Effort is { Access: null, Minutes: <= Longest, WaitMinutes: 0, Money: 0, Tools.IsEmpty: true, HarmChance: null };
}
