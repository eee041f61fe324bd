namespace Triage.Measurements;

/// <summary>Every problem text of this project.</summary>
internal static class MeasurementProblems
{
    private const int Quoted = 40;

    public const string NotPositive = "only a positive value in the unit of the part has a place in a series or a code";

    public static MeasurementProblem TurnItRound { get; } =
        new("no resistor has these bands in this order", "turn it round and read from the other end, or measure it");

    public static MeasurementProblem NotAValue(string text) =>
        new($"{Quote(text)} is not a value", "write a number and a unit, such as 4n7, 2.2 k, 11.2 V, or OL for over range");

    public static MeasurementProblem NoUnit(string text) =>
        new($"{Quote(text)} is a reading without a unit", $"add the unit, such as {text} V or {text} ohm");

    public static MeasurementProblem PrefixWithoutUnit(string text, string prefix) =>
        new($"{Quote(text)} is a reading without a unit", $"say what {Quote(prefix)} counts, such as {prefix}V, {prefix}A or {prefix}F");

    public static MeasurementProblem UnknownUnit(string suffix) =>
        new($"{Quote(suffix)} is not a unit known here", "write ohm, F, H, V, A, W, Hz, s, °C, %, dB or mm, with p, n, µ, m, k, M or G before it");

    /// <param name="found">Name of the unit, as for <paramref name="expected"/>.</param>
    public static MeasurementProblem WrongUnit(string text, string found, string expected) =>
        new($"{Quote(text)} is in {found} where {expected} is expected", $"give it in {expected}, or change what is measured");

    public static MeasurementProblem PrefixNotUsed(string prefix, string unit) =>
        new($"{Quote(prefix)} before {unit} is not a size met at a bench", "check small m (thousandth) against capital M (million), and the unit");

    public static MeasurementProblem AmbiguousComma(string number) =>
        new(
            $"{Quote(number)} can mean {number.Replace(',', '.')} or {number.Replace(",", "", StringComparison.Ordinal)}",
            $"write {number.Replace(',', '.')} or {number.Replace(",", "", StringComparison.Ordinal)}");

    public static MeasurementProblem BadGroups(string number) =>
        new($"{Quote(number)} has digits grouped in no usual way", "write it with one decimal point and no grouping, such as 1234.5");

    public static MeasurementProblem OutOfReach(string text) =>
        new($"{Quote(text)} is too large or too small to be a value", "check the digits and the exponent");

    public static MeasurementProblem PowerOnWhileFeeding(string where) =>
        new(
            $"{where} was measured on a range that feeds the part while the power was on",
            "switch off, unplug, drain stored charge and check it with the voltage range first; the reading is wrong and the meter may be harmed");

    public static MeasurementProblem NotDrained(string where) =>
        new($"{where} was measured with the power off but not drained", "drain stored charge, check with the voltage range, and measure again: what is left shifts the reading");

    public static MeasurementProblem NegativeTime(string where) =>
        new($"the time at which {where} was read lies before the start", "give seconds from 0 up");

    public static MeasurementProblem UpsideDown(string state, double low, double high) =>
        new(FormattableString.Invariant($"the range of {state} runs from {low} to {high}"), "give the lower value first");

    public static MeasurementProblem NotARange(string text) =>
        new(
            $"{Quote(text)} is not a range of readings",
            "write 0 … 20 R (a unit on both ends), > 10 M or OL, < 50 % of rating, rating ± 20 %, or for three looks at a capacitor climbs, flat and low, settles, OL at once");

    public static MeasurementProblem NoMode(string words, IEnumerable<string> modes) =>
        new($"{Quote(words)} is not a mode of an instrument known here", $"write one of {string.Join(", ", modes)}, or leave it out");

    public static MeasurementProblem NothingShown(string where) =>
        new($"{(where.Length == 0 ? "the reading" : where)} says no value", "add what the instrument showed, with its unit");

    public static MeasurementProblem NotACode(string code) =>
        new($"{Quote(code)} is not a value code of IEC 60062", "write it as printed, such as 4n7, 2K2J, R47, 103 or 4702, or measure the part");

    public static MeasurementProblem NotAColour(string word) =>
        new($"{Quote(word)} is not a band colour", "use black, brown, red, orange, yellow, green, blue, violet, grey, white, gold, silver or pink");

    public static MeasurementProblem BandCount(int count) =>
        new(FormattableString.Invariant($"{count} bands are not a resistor's"), "give three to six, in the order of reading");

    public static MeasurementProblem InstrumentOff(string name, double shown, double low, double high) =>
        new(
            FormattableString.Invariant($"{name} shows {shown} on a part known to lie from {low} to {high}"),
            "check its battery, fuse and leads, and try another known-good part before trusting it");

    private static string Quote(string text) => text.Length <= Quoted ? $"\"{text}\"" : $"\"{text[..Quoted]}…\"";
}
