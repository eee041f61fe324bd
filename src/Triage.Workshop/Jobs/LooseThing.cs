using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Workshop.Jobs;

/// <summary>One thing that came off the machine, and whether it is back on.</summary>
/// <param name="Off">As it was recorded when it came off.</param>
/// <param name="BackOn">It went back on later.</param>
/// <param name="LeftOver">Not back on, although what was open when it came off is shut now.</param>
public sealed record LooseThing(TakenOff Off, bool BackOn, bool LeftOver)
{
    /// <summary>Everything that came off, in the order in which it did. Of several that are called alike, the last one off goes back on first.</summary>
    public static ImmutableArray<LooseThing> Of(ImmutableArray<LogEntry> log)
    {
        var back = new HashSet<int>();
        foreach (var entry in log.Select((e, at) => (Back: e as TakenOff, At: at)).Where(e => e.Back is { BackOn: true }))
        {
            var off = Enumerable.Range(0, entry.At).LastOrDefault(i => !back.Contains(i) && log[i] is TakenOff { BackOn: false } thing && Same(thing, entry.Back!), -1);
            if (off >= 0)
                back.Add(off);
        }

        return [.. log.Select((e, at) => (Off: e as TakenOff, At: at)).Where(e => e.Off is { BackOn: false })
            .Select(e => new LooseThing(e.Off!, back.Contains(e.At), !back.Contains(e.At) && ShutSince(log, e.At)))];
    }

    private static bool Same(TakenOff off, TakenOff back) => off.What == back.What && (back.Where is null || back.Where == off.Where);

    /// <summary>A step that was open when the thing came off is shut now; where none was recorded as open, any step.</summary>
    private static bool ShutSince(ImmutableArray<LogEntry> log, int at)
    {
        var openThen = OpenSteps.Of(log.Take(at));
        return log.Skip(at + 1).OfType<Opened>().GroupBy(o => o.Step, StringComparer.Ordinal).Any(step => step.Last().Shut && (openThen.IsEmpty || openThen.Contains(step.Key)));
    }
}
