using System.Globalization;
using System.Text.RegularExpressions;
using Triage.Measurements.Quantities;

namespace Triage.Measurements.Markings;

/// <summary>
/// Codes printed on parts, after IEC 60062: letters for the point ("4n7", "2K2J", "R010"), or two or three digits and a power of ten
/// ("103", "4702", "104K"), counted in Ω, pF or µH. On capacitors a last 8 or 9 is ×0.01 or ×0.1 (common practice, no source).
/// </summary>
public static partial class ValueCode
{
    [GeneratedRegex(@"^(?<code>[0-9]{3,4})(?<tolerance>[A-Z])?$", RegexOptions.ExplicitCapture)]
    private static partial Regex Digits { get; }

    [GeneratedRegex(@"^(?<code>[0-9]*(?<mark>[RKMGLpnuµμmF])[0-9]*)(?<tolerance>[A-Z])?$", RegexOptions.ExplicitCapture)]
    private static partial Regex Letters { get; }

    /// <summary>Reads a code; never throws.</summary>
    /// <param name="code">As printed.</param>
    /// <param name="unit">Ohm, farad or henry: what sort of part carries it.</param>
    public static MarkingResult Read(string code, Unit unit)
    {
        var printed = code.Trim();
        if (unit is not (Unit.Ohm or Unit.Farad or Unit.Henry))
        {
            return Wrong(printed);
        }

        // on resistors a last R, K or M is the point ("470K" is 470 kΩ); on capacitors it is the tolerance ("104K" is 100 nF ±10 %)
        var pointLast = unit is Unit.Ohm && printed is [.., 'R' or 'K' or 'M'];
        if (!pointLast && Digits.Match(printed) is { Success: true } digits)
        {
            return Coded(printed, digits, Power(digits.Groups["code"].Value, unit));
        }

        return Letters.Match(printed) is { Success: true } letters && letters.Groups["code"].Value.Any(char.IsAsciiDigit)
            ? Coded(printed, letters, Lettered(letters.Groups["code"].Value, letters.Groups["mark"].Value, unit))
            : Wrong(printed);
    }

    /// <summary>The letter code of a value with up to four significant digits: "4n7", "2K2", "R47", and the tolerance letter when there is one.</summary>
    /// <exception cref="ArgumentException">The value is not positive or not in ohms or farads.</exception>
    public static string Write(Marking marking)
    {
        if (marking.Value is not { Value: > 0, Unit: Unit.Ohm or Unit.Farad })
        {
            throw new ArgumentException(MeasurementProblems.NotPositive, nameof(marking));
        }

        var parts = ValueText.Format(marking.Value, 4).Split(' ');
        var mark = Mark(parts[1], marking.Value.Unit);
        var (number, exponentMark) = parts[1] is "mΩ" ? (Thousandths(parts[0]), "R") : (parts[0], mark);
        var code = number.Contains('.', StringComparison.Ordinal) ? number.Replace(".", exponentMark, StringComparison.Ordinal) : number + exponentMark;
        return (code.StartsWith("0R", StringComparison.Ordinal) ? code[1..] : code) + marking.Tolerance?.Letter();
    }

    private static string Mark(string symbol, Unit unit) => unit switch
    {
        Unit.Ohm => symbol is "Ω" ? "R" : symbol[..1].ToUpperInvariant(),
        _ => symbol[..1],
    };

    private static string Thousandths(string number) =>
        (decimal.Parse(number, CultureInfo.InvariantCulture) / 1000).ToString(CultureInfo.InvariantCulture);

    private static ReadResult Power(string code, Unit unit)
    {
        var last = code[^1] - '0';
        var power = unit is Unit.Farad && last >= 8 ? last - 10 : last;
        var counted = unit switch
        {
            Unit.Farad => -12,
            Unit.Henry => -6,
            _ => 0,
        };
        return ValueText.Read($"{code[..^1]}e{power + counted}", unit);
    }

    private static ReadResult Lettered(string code, string mark, Unit unit)
    {
        var spelled = (mark, unit) switch
        {
            ("R", Unit.Farad) => "p", // "4R7" on a small ceramic
            ("R", Unit.Henry) => "u", // "4R7" on a choke is microhenries
            ("L", Unit.Ohm) => "m",
            ("K" or "M" or "G", Unit.Farad or Unit.Henry) => "?",
            _ => mark,
        };
        var (before, after) = (code[..code.IndexOf(mark, StringComparison.Ordinal)], code[(code.IndexOf(mark, StringComparison.Ordinal) + 1)..]);
        return ValueText.Read($"{(before.Length == 0 ? "0" : before)}.{(after.Length == 0 ? "0" : after)} {spelled}", unit);
    }

    private static MarkingResult Coded(string printed, Match match, ReadResult read)
    {
        var letter = match.Groups["tolerance"].Value;
        var tolerance = letter.Length == 0 ? null : Tolerance.OfLetter(letter[0]);
        return read.Quantity is { } value && (letter.Length == 0 || tolerance is not null)
            ? new MarkingResult(new Marking(value, tolerance), null)
            : Wrong(printed);
    }

    private static MarkingResult Wrong(string code) => new(null, MeasurementProblems.NotACode(code));
}
