using System.Globalization;
using System.Text.RegularExpressions;

namespace Triage.Measurements.Quantities;

/// <summary>
/// Values as people type them: "4n7", "2k2", "R47" (IEC 60062), "0.1 F", "1,2 k", "11.2 V", "1 234,5 mV", "OL", "unknown part", "> 20 MΩ".
/// Culture plays no part. Small m is a thousandth, capital M a million.
/// </summary>
public static partial class ValueText
{
    private const int Longest = 80;

    [GeneratedRegex(@"^(?<sign>[-+−–]?)\s*(?<before>[0-9]*)(?<mark>[RkKMmGpnuµμFVAHWΩΩ])(?<after>[0-9]+)(?<unit>[^0-9]*)$", RegexOptions.ExplicitCapture)]
    private static partial Regex LetterStyle { get; }

    [GeneratedRegex(@"^(?<sign>[-+−–]?)\s*(?<number>[.,]?[0-9]([0-9.,'’\s]*[0-9])?)([eE](?<power>[-+−]?[0-9]{1,3}))?(?<unit>[^0-9.,]*)$", RegexOptions.ExplicitCapture)]
    private static partial Regex PlainStyle { get; }

    /// <summary>Reads one value; never throws.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="expected">Unit known from context, which a bare number then has; null when none is known.</param>
    public static ReadResult Read(string text, Unit? expected)
    {
        var trimmed = text.Trim();
        if (SpokenValues.Read(trimmed) is { } spoken)
        {
            return ReadResult.Of(spoken);
        }

        if (trimmed.Length > Longest)
        {
            return ReadResult.Wrong(MeasurementProblems.NotAValue(trimmed));
        }

        return trimmed[0] == '>' ? Beyond(trimmed[1..], expected) : Number(trimmed, expected);
    }

    /// <summary>Engineering notation: "4.7 nF", "2.2 kΩ", "11.2 V".</summary>
    /// <param name="quantity">A finite value.</param>
    /// <param name="digits">Significant digits to round to; null for all.</param>
    public static string Format(Quantity quantity, int? digits = null)
    {
        var (least, most) = UnitSymbols.PrefixSpan(quantity.Unit);
        var number = Digits.Of(quantity.Value, digits);
        var exponent = number.IsZero ? Math.Clamp(0, least, most) : Math.Clamp((int)Math.Floor(number.Power / 3.0) * 3, least, most);
        var symbol = UnitSymbols.Prefix(exponent) + UnitSymbols.Symbol(quantity.Unit);
        return symbol.Length == 0 ? number.Shifted(exponent) : $"{number.Shifted(exponent)} {symbol}";
    }

    private static ReadResult Beyond(string bound, Unit? expected)
    {
        var read = Read(bound, expected);
        return read switch
        {
            { Quantity: { } beyond } => ReadResult.Of(MeasuredValue.OverRange(beyond)),
            { Value: { } } => ReadResult.Wrong(MeasurementProblems.NotAValue(">" + bound)),
            _ => read,
        };
    }

    private static ReadResult Number(string text, Unit? expected)
    {
        if (LetterStyle.Match(text) is { Success: true } letter && LettersLead(letter))
        {
            var before = letter.Groups["before"].Value;
            var digits = $"{(before.Length == 0 ? "0" : before)}.{letter.Groups["after"].Value}";
            return Scaled(letter.Groups["sign"].Value, digits, 0, letter.Groups["mark"].Value + letter.Groups["unit"].Value.Trim(), expected, text);
        }

        var plain = PlainStyle.Match(text);
        if (!plain.Success)
        {
            return ReadResult.Wrong(MeasurementProblems.NotAValue(text));
        }

        if (NumberText.Read(plain.Groups["number"].Value, out var problem) is not { } number)
        {
            return ReadResult.Wrong(problem!);
        }

        var power = plain.Groups["power"] is { Success: true } p ? int.Parse(Ascii(p.Value), CultureInfo.InvariantCulture) : 0;
        return Scaled(plain.Groups["sign"].Value, number, power, plain.Groups["unit"].Value, expected, text);
    }

    /// <summary>"R47" and "n47" are values; "V5" and "F1" are names of parts.</summary>
    private static bool LettersLead(Match letter) =>
        letter.Groups["before"].Length > 0 || letter.Groups["mark"].ValueSpan[0] is not ('F' or 'V' or 'A' or 'H' or 'W');

    private static ReadResult Scaled(string sign, string digits, int power, string suffix, Unit? expected, string text)
    {
        // "3k3 ohm" and "4R7Ω" both come here with the unit behind the letter; R is a unit itself
        var spelled = suffix.Length > 1 && suffix[0] is 'R' && UnitSymbols.IsUnit(suffix[1..].Trim(), out var unit, out _) && unit == Unit.Ohm ? "R" : suffix;
        if (UnitSuffix.Read(spelled, expected, text, out var problem) is not { } scale)
        {
            return ReadResult.Wrong(problem!);
        }

        // scaled in text, so that 4n7 is the double nearest to 4.7e-9
        var value = double.Parse($"{Ascii(sign)}{digits}e{power + scale.Exponent}", CultureInfo.InvariantCulture) * scale.Factor;
        var vanished = value == 0 && digits.Any(c => c is >= '1' and <= '9');
        return double.IsFinite(value) && !vanished
            ? ReadResult.Of(new Quantity(value, scale.Unit))
            : ReadResult.Wrong(MeasurementProblems.OutOfReach(text));
    }

    private static string Ascii(string signed) => signed.Replace('−', '-').Replace('–', '-');
}
