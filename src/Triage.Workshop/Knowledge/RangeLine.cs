using System.Globalization;
using System.Text.RegularExpressions;
using Triage.Measurements.Instruments;
using Triage.Measurements.Quantities;
using Triage.Measurements.Readings;
using Triage.Notes.Writing;

namespace Triage.Workshop.Knowledge;

/// <summary>One line of an accuracy table as a sheet has it: "dc-volts 20 V, step 10 mV, 0.5 % + 2".</summary>
public static partial class RangeLine
{
    /// <summary>A line that reads back as the same range.</summary>
    public static string Of(InstrumentRange range)
    {
        var unit = ReadingModes.UnitOf(range.Mode) ?? Unit.Number;
        return FormattableString.Invariant(
            $"{ReadingModeWords.Of(range.Mode)} {ValueText.Format(new(range.FullScale, unit))}, step {ValueText.Format(new(range.Resolution, unit))}, {range.Percent} % + {range.Counts}");
    }

    /// <summary>The fields of the range, values as typed; null when the line is not of this form.</summary>
    internal static YamlFields? Read(string line)
    {
        if (Form.Match(line.Trim()) is not { Success: true } read)
            return null;
        var words = read.Groups["what"].Value.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var mode = Enumerable.Range(1, words.Length).Reverse().FirstOrDefault(n => ReadingModeWords.Find(string.Join(' ', words[..n])) is not null);
        return mode == 0 || mode == words.Length ? null : new FieldWriter()
            .Text("mode", ReadingModeWords.Of(ReadingModeWords.Find(string.Join(' ', words[..mode]))!.Value))
            .Text("to", string.Join(' ', words[mode..])).Text("step", read.Groups["step"].Value)
            .Number("percent", Number(read.Groups["percent"])).Number("counts", Number(read.Groups["counts"])).OnOneLine;
    }

    private static double? Number(Group group) =>
        group.Success ? double.Parse(group.Value.Replace(',', '.'), CultureInfo.InvariantCulture) : null;

    [GeneratedRegex(@"^(?<what>\S.*?),\s+step\s+(?<step>[^;]+?),\s+±?\s*(?<percent>[0-9]+([.,][0-9]+)?)\s*%(\s*\+\s*(?<counts>[0-9]+([.,][0-9]+)?)(\s*(counts?|digits?))?)?$", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase)]
    private static partial Regex Form { get; }
}
