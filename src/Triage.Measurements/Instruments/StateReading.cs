using System.Collections.Frozen;
using System.Text.RegularExpressions;
using Triage.Measurements.Quantities;
using Triage.Measurements.Readings;

namespace Triage.Measurements.Instruments;

/// <summary>
/// What an instrument shows of a part in one state, as a note writes it: "0 … 20 R", "&gt; 10 M or OL", "&lt; 50 % of rating",
/// "rating ± 20 %", "5 V ± 5 %", "OL", or for the three looks at a capacitor on an ohm range "flat and low".
/// </summary>
public sealed partial record StateReading
{
    /// <summary>How far a range runs that has no upper end: decades on logarithmic axes, times on linear ones (common practice, no source).</summary>
    private const double OpenDecades = 1e5, OpenTimes = 10;

    /// <summary>Chance of over range where it is one of two things a state may show (common practice, no source).</summary>
    private const double EitherWay = 0.5;

    private static readonly FrozenDictionary<string, CapacitorBehaviour> Behaviours = new Dictionary<string, CapacitorBehaviour>
    {
        ["climbs"] = CapacitorBehaviour.TakesCharge,
        ["flat and low"] = CapacitorBehaviour.Shorted,
        ["settles"] = CapacitorBehaviour.Leaky,
        ["OL at once"] = CapacitorBehaviour.Open,
    }.ToFrozenDictionary(StringComparer.OrdinalIgnoreCase);

    [GeneratedRegex(@"^(?<low>.+?)\s*(…|\.\.\.|\bto\b)\s*(?<high>.+)$", RegexOptions.ExplicitCapture)]
    private static partial Regex Between { get; }

    [GeneratedRegex(@"^(?<nominal>.+?)\s*(±\s*(?<both>[0-9.]+)|[-−–]\s*(?<minus>[0-9.]+)\s*\+\s*(?<plus>[0-9.]+))\s*%$", RegexOptions.ExplicitCapture)]
    private static partial Regex Tolerance { get; }

    [GeneratedRegex(@"^(?<range>.+?)\s*%\s*of rating$", RegexOptions.ExplicitCapture)]
    private static partial Regex OfTheRating { get; }

    [GeneratedRegex(@"^[-−+]?[0-9.,\s]+")]
    private static partial Regex Number { get; }

    private StateReading(string text) => Text = text;

    /// <summary>Stands where a text could not be read.</summary>
    public static StateReading Unread { get; } = new("");

    /// <summary>As written.</summary>
    public string Text { get; }

    /// <summary>Lower end, in the unit of the mode, or as a multiple of the rating.</summary>
    public double Low { get; private init; }

    public double High { get; private init; }

    /// <summary>Low and high are multiples of what the part is rated for.</summary>
    public bool OfRating { get; private init; }

    /// <summary>P(over range) beyond what the range implies.</summary>
    public double OverRange { get; private init; }

    /// <summary>For three looks at a capacitor; null for a range.</summary>
    public CapacitorBehaviour? Behaviour { get; private init; }

    /// <summary>Reads what a note says; never throws. Exactly one of the two is null.</summary>
    public static (StateReading? State, MeasurementProblem? Problem) Read(string text, ReadingMode mode)
    {
        var said = text.Trim();
        if (Behaviours.TryGetValue(said, out var behaviour))
        {
            return mode is ReadingMode.Resistance ? (new(said) { Behaviour = behaviour }, null) : (null, MeasurementProblems.NotARange(said));
        }

        var unit = ReadingModes.UnitOf(mode);
        if (unit is null || said.Length == 0)
        {
            return (null, MeasurementProblems.NotARange(said));
        }

        var alternatives = said.Split(" or ", StringSplitOptions.TrimEntries);
        var over = alternatives[^1] is "OL";
        var range = over ? string.Join(" or ", alternatives[..^1]) : said;
        return range.Length == 0 ? (Beyond(said, unit.Value), null)
            : Ends(range, unit.Value) is { } ends && ends.Low <= ends.High
                ? (new(said) { Low = ends.Low, High = ends.High, OfRating = ends.OfRating, OverRange = over ? EitherWay : 0 }, null)
                : (null, MeasurementProblems.NotARange(said));
    }

    /// <summary>Where a part of that rating reads; null when the rating is needed and not known, or when it is no range.</summary>
    /// <param name="rating">In the unit of the mode.</param>
    public (double Low, double High)? Range(double? rating) =>
        Behaviour is not null ? null
        : !OfRating ? (Low, High)
        : rating is { } r ? (Math.Min(Low * r, High * r), Math.Max(Low * r, High * r))
        : null;

    public override string ToString() => Text;

    /// <summary>Nothing but over range: far beyond any meter where values run over decades, otherwise by its chance alone.</summary>
    private static StateReading Beyond(string text, Unit unit) =>
        Logarithmic(unit) ? new(text) { Low = 1e9, High = 1e12 } : new(text) { Low = 1e6, High = 1e6, OverRange = 1 };

    private static (double Low, double High, bool OfRating)? Ends(string range, Unit unit)
    {
        if (OfTheRating.Match(range) is { Success: true } relative)
        {
            return Plain(relative.Groups["range"].Value, Unit.Percent) is { } percent ? (percent.Low / 100, percent.High / 100, true) : null;
        }

        return Tolerance.Match(range) is { Success: true } within ? Within(within, unit)
            : Plain(range, unit) is { } ends ? (ends.Low, ends.High, false)
            : null;
    }

    private static (double Low, double High, bool OfRating)? Within(Match within, Unit unit)
    {
        var ofRating = within.Groups["nominal"].Value is "rating";
        var nominal = ofRating ? 1 : Value(within.Groups["nominal"].Value, unit);
        var (minus, plus) = within.Groups["both"] is { Success: true } both ? (both.Value, both.Value) : (within.Groups["minus"].Value, within.Groups["plus"].Value);
        if (nominal is not { } middle || Value(minus, Unit.Percent) is not { } below || Value(plus, Unit.Percent) is not { } above)
        {
            return null;
        }

        var range = ExpectedRange.Within(new(middle, unit), below, above, ExpectedBy.Rating);
        return (range.Low, range.High, ofRating);
    }

    private static (double Low, double High)? Plain(string range, Unit unit)
    {
        if (range[0] is '<')
        {
            return Value(range[1..], unit) is { } most ? (0, most) : null;
        }

        if (range[0] is '>')
        {
            return Value(range[1..], unit) is { } least ? (least, least * (Logarithmic(unit) ? OpenDecades : OpenTimes)) : null;
        }

        var between = Between.Match(range);
        var (low, high) = (between.Groups["low"].Value, between.Groups["high"].Value);
        return between.Success && Value(low, unit) is { } from && Value(high, unit) is { } to && SameUnit(low, high, from, unit) ? (from, to) : null;
    }

    /// <summary>"1 … 5 k" could start at 1 or at 1 k: both ends say their unit, or neither has a prefix.</summary>
    private static bool SameUnit(string low, string high, double from, Unit unit) =>
        Number.Match(low).Length < low.Length || from == 0 || Value(low + Number.Replace(high, ""), unit) == from;

    private static double? Value(string text, Unit unit) => ValueText.Read(text, unit).Quantity?.Value;

    private static bool Logarithmic(Unit unit) => unit is Unit.Ohm or Unit.Farad or Unit.Henry or Unit.Hertz;
}
