using System.Globalization;
using System.Text.RegularExpressions;
using Triage.Measurements.Markings;
using Triage.Measurements.Quantities;

namespace Triage.Measurements.Parts;

/// <summary>
/// A whole rating as a parts list or a drawing gives it: "0.1 F 5.5 V", "T 315 mA", "8 R 3 W", "6 x 1.5 V", "47/16", "104K 50 V",
/// "-18 V behind 1 M" for a voltage that comes through a resistance.
/// </summary>
public static partial class RatingText
{
    /// <summary>"T 315 mA".</summary>
    private const int MostWords = 3;

    [GeneratedRegex(@"(?<count>[0-9]{1,2})\s*[x×]\s*(?<each>[0-9.]+\s*V)\b", RegexOptions.ExplicitCapture)]
    private static partial Regex CellsInSeries { get; }

    [GeneratedRegex(@"\b(behind|through)\s+(?<ohms>\S+(\s(k|M|R|ohm|Ω)\w*)?)", RegexOptions.ExplicitCapture)]
    private static partial Regex Behind { get; }

    [GeneratedRegex(@"[0-9]\s*V\b")]
    private static partial Regex SaysVolts { get; }

    /// <summary>What can be read of it; the first value of each kind counts. Never throws.</summary>
    public static PartRating Read(string text)
    {
        var rating = new PartRating();
        if (Behind.Match(text) is { Success: true } behind && ValueText.Read(behind.Groups["ohms"].Value, Unit.Ohm).Quantity is { } source)
        {
            (rating, text) = (rating with { SourceOhms = source.Value }, text.Remove(behind.Index, behind.Length));
        }

        if (CellsInSeries.Match(text) is { Success: true } cells && ValueText.Read(cells.Groups["each"].Value, null).Quantity is { } each)
        {
            rating = rating with { Volts = each.Value * int.Parse(cells.Groups["count"].Value, CultureInfo.InvariantCulture) };
            text = text.Remove(cells.Index, cells.Length);
        }

        var capacitor = SaysVolts.IsMatch(text);
        var words = text.Split([' ', ',', ';'], StringSplitOptions.RemoveEmptyEntries);
        for (var at = 0; at < words.Length;)
        {
            var (taken, found) = At(words, at, rating, capacitor);
            (rating, at) = (found, at + taken);
        }

        return rating;
    }

    /// <summary>The rating in one unit; null when it says none.</summary>
    public static double? In(this PartRating rating, Unit unit) => unit switch
    {
        Unit.Volt => rating.Volts,
        Unit.Ampere => rating.Amperes,
        Unit.Watt => rating.Watts,
        _ => rating.Value is { } value && value.Unit == unit ? value.Value : null,
    };

    private static (int Taken, PartRating Rating) At(string[] words, int at, PartRating rating, bool capacitor)
    {
        for (var count = Math.Min(MostWords, words.Length - at); count > 0; count--)
        {
            var said = string.Join(' ', words[at..(at + count)]);
            if (((capacitor ? Coded(said) : null) ?? RatingShorthand.Read(said) ?? Single(said)) is { } found)
            {
                return (count, Merge(rating, found));
            }
        }

        return (1, rating);
    }

    private static PartRating? Single(string said)
    {
        var tolerance = said.TrimStart('±', ' ');
        return ValueText.Read(tolerance, null).Quantity switch
        {
            { Unit: Unit.Volt } volts => new() { Volts = volts.Value },
            { Unit: Unit.Ampere } amperes => new() { Amperes = amperes.Value },
            { Unit: Unit.Watt } watts => new() { Watts = watts.Value },
            { Unit: Unit.Hertz } hertz => new() { Value = hertz },
            { Unit: Unit.Percent } percent => new() { TolerancePercent = percent.Value },
            _ => null,
        };
    }

    /// <summary>"104K" beside a voltage is a capacitor of 100 nF ±10 %; alone it would be a resistor.</summary>
    private static PartRating? Coded(string said) =>
        said.Length == 4 && said[..3].All(char.IsAsciiDigit) && ValueCode.Read(said, Unit.Farad).Marking is { Tolerance: not null } marking
            ? new() { Value = marking.Value, TolerancePercent = marking.Tolerance.Value.Plus }
            : null;

    private static PartRating Merge(PartRating first, PartRating then) => first with
    {
        Value = first.Value ?? then.Value,
        Volts = first.Volts ?? then.Volts,
        Amperes = first.Amperes ?? then.Amperes,
        Watts = first.Watts ?? then.Watts,
        Speed = first.Speed ?? then.Speed,
        TolerancePercent = first.TolerancePercent ?? then.TolerancePercent,
        Assumed = first.Assumed ?? then.Assumed,
    };
}
