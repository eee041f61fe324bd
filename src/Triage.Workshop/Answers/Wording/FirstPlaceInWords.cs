using System.Collections.Immutable;
using System.Globalization;
using Triage.Notes.Kinds;
using Triage.Reasoning.Inference;
using Triage.Workshop.Chances;
using Triage.Workshop.Knowledge;
using Triage.Workshop.Model;

namespace Triage.Workshop.Answers.Wording;

/// <summary>How firmly the first place stands: the one number that has to move least, within its interval, to give it to another cause.</summary>
internal sealed class FirstPlaceInWords(DeviceNetwork network, Notebook notes, WordsFor words)
{
    private const string Firm = "No single number, moved within its interval, changes the first place.";

    /// <summary>
    /// Null where findings that come together weigh otherwise than the network's numbers, of which the sensitivity knows, and where the
    /// posterior is not exact: each number tried would then cost a search.
    /// </summary>
    /// <param name="works">The machine works: the causes say what it was when it came in.</param>
    public static string? Of(Reasoned reasoned, Notebook notes, WordsFor words, bool works) =>
        reasoned.IsMoved || reasoned.ByNetwork.LeftOut > 0 ? null
        : Sensitivity.Of(reasoned.Network.Network, reasoned.Evidence.Evidence, now: !works) is [var least, ..] ? new FirstPlaceInWords(reasoned.Network, notes, words).Say(least)
        : Firm;

    public string Say(Swing swing) =>
        $"First place would go to “{WordsFor.CauseName(swing.Instead, notes)}” if {If(swing)}.";

    private string If(Swing swing)
    {
        var up = swing.At > swing.Chance;
        var (end, more) = (up ? swing.Interval.Upper : swing.Interval.Lower, up ? "more" : "less");
        return swing.Kind switch
        {
            // a prior is a share scaled to independent roots: only its ratio means something at the bench
            SwingKind.Prior => $"{Cause(swing, [.. network.FaultsIn(swing.Root, swing.State)])} were {more} than {Times(swing.At / swing.Chance)} times as common as taken here ({(up ? "up" : "down")} to {Times(end / swing.Chance)} times is plausible)",
            SwingKind.Link => $"{Cause(swing, Behind(swing))} showed {Value(swing)} {Often(swing, more)}",
            SwingKind.Ambient => $"{Value(swing)} came without any listed cause {Often(swing, more)}",
        };
    }

    private string Cause(Swing swing, ImmutableArray<string> faults) =>
        faults is [var only] && only == swing.Instead ? "it" : string.Join(" with ", faults.Select(f => $"“{WordsFor.CauseName(f, notes)}”"));

    /// <summary>Of a compound root the fault that is in all the combinations which share the number.</summary>
    private ImmutableArray<string> Behind(Swing swing)
    {
        var links = network.Network.Findings[swing.Finding].Links.Where(l => l.Root == swing.Root).ToList();
        var moved = links.First(l => l.State == swing.State);
        var common = links.Where(l => l.Produces == moved.Produces).Select(l => network.FaultsIn(l.Root, l.State)).Aggregate((a, b) => a.Intersect(b));
        return common.Any() ? [.. common] : [.. network.FaultsIn(swing.Root, swing.State)];
    }

    private string Value(Swing swing)
    {
        var finding = network.Network.Findings[swing.Finding];
        var value = finding.Values[swing.Value];
        var said = finding.Id.StartsWith(DeviceNetwork.MeasurementPrefix, StringComparison.Ordinal)
            ? $"“{words.Entry(new Tested(default, finding.Id[DeviceNetwork.MeasurementPrefix.Length..], value))}”"
            : $"“{words.Value(finding.Id, value)}”";
        return finding.Nominal || swing.Value == finding.Values.Length - 1 ? said : $"{said}, where nothing worse,";
    }

    private static string Often(Swing swing, string more)
    {
        var (at, taken) = (Percent(swing.At, "0"), Percent(swing.Chance, "0"));
        if (at == taken)
            (at, taken) = (Percent(swing.At, "0.##"), Percent(swing.Chance, "0.##"));
        return $"{more} often than {at} % (taken as {taken} %, could be {Percent(swing.Interval.Lower, "0")}–{Percent(swing.Interval.Upper, "0")} %)";
    }

    private static string Percent(double chance, string format) =>
        (100 * chance).ToString(chance is < 0.02 or > 0.98 ? "0.###" : format, CultureInfo.InvariantCulture);

    private static string Times(double ratio) => ratio.ToString(ratio < 2 ? "0.##" : "0.#", CultureInfo.InvariantCulture);
}
