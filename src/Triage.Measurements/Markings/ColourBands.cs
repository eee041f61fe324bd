using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Globalization;
using Triage.Measurements.Quantities;

namespace Triage.Measurements.Markings;

/// <summary>
/// Colour bands of resistors after IEC 60062: three or four bands are two digits, multiplier, tolerance (20 % when not banded); five are
/// three digits, multiplier, tolerance; six add the temperature coefficient. Tables from memory; tolerances after the 2016 edition.
/// </summary>
public static class ColourBands
{
    private static readonly FrozenDictionary<BandColour, double> Tolerances = new Dictionary<BandColour, double>
    {
        [BandColour.Brown] = 1, [BandColour.Red] = 2, [BandColour.Orange] = 0.05, [BandColour.Yellow] = 0.02, [BandColour.Green] = 0.5,
        [BandColour.Blue] = 0.25, [BandColour.Violet] = 0.1, [BandColour.Grey] = 0.01, [BandColour.Gold] = 5, [BandColour.Silver] = 10,
    }.ToFrozenDictionary();

    private static readonly FrozenDictionary<BandColour, double> Coefficients = new Dictionary<BandColour, double>
    {
        [BandColour.Black] = 250, [BandColour.Brown] = 100, [BandColour.Red] = 50, [BandColour.Orange] = 15, [BandColour.Yellow] = 25,
        [BandColour.Green] = 20, [BandColour.Blue] = 10, [BandColour.Violet] = 5, [BandColour.Grey] = 1,
    }.ToFrozenDictionary();

    /// <summary>Reads "yellow violet red gold", separated by spaces, commas or hyphens; never throws.</summary>
    public static MarkingResult Read(string bands)
    {
        var words = bands.Split([' ', ',', '-', '/'], StringSplitOptions.RemoveEmptyEntries);
        var colours = ImmutableArray.CreateBuilder<BandColour>();
        foreach (var word in words)
        {
            var name = word.Equals("gray", StringComparison.OrdinalIgnoreCase) ? "grey" : word.Equals("purple", StringComparison.OrdinalIgnoreCase) ? "violet" : word;
            if (!char.IsLetter(name[0]) || !Enum.TryParse<BandColour>(name, ignoreCase: true, out var colour))
            {
                return new MarkingResult(null, MeasurementProblems.NotAColour(word));
            }

            colours.Add(colour);
        }

        return Read(colours.ToImmutable());
    }

    /// <summary>Reads three to six bands, in the order of reading; never throws.</summary>
    public static MarkingResult Read(ImmutableArray<BandColour> bands)
    {
        if (bands is [BandColour.Black])
        {
            return new MarkingResult(new Marking(new Quantity(0, Unit.Ohm), null), null); // a link dressed as a resistor
        }

        if (bands.Length is < 3 or > 6)
        {
            return new MarkingResult(null, MeasurementProblems.BandCount(bands.Length));
        }

        var digits = bands.Length <= 4 ? 2 : 3;
        if (bands.Take(digits).Any(b => b > BandColour.White))
        {
            return new MarkingResult(null, MeasurementProblems.TurnItRound);
        }

        double? percent = bands.Length == 3 ? 20 : Tolerances.TryGetValue(bands[digits + 1], out var tolerance) ? tolerance : null;
        double? drift = bands.Length == 6 && Coefficients.TryGetValue(bands[5], out var coefficient) ? coefficient : null;
        if (percent is null || (bands.Length == 6 && drift is null))
        {
            return new MarkingResult(null, MeasurementProblems.TurnItRound);
        }

        var power = bands[digits] > BandColour.White ? BandColour.White - bands[digits] : (int)bands[digits];
        var number = string.Concat(bands.Take(digits).Select(b => (int)b)) + "e" + power.ToString(CultureInfo.InvariantCulture);
        var ohms = new Quantity(double.Parse(number, CultureInfo.InvariantCulture), Unit.Ohm);
        return new MarkingResult(new Marking(ohms, Tolerance.Even(percent.Value)) { PerMillionPerKelvin = drift }, null);
    }

    /// <summary>The bands of a resistor: four for two significant digits, five for three; null when bands cannot say it.</summary>
    public static ImmutableArray<BandColour>? Write(Quantity ohms, double tolerancePercent)
    {
        var number = Digits.Of(ohms.Value, null);
        var count = number.Significant.Length <= 2 ? 2 : 3;
        var power = number.Power - count + 1;
        var letter = Tolerances.Where(t => t.Value == tolerancePercent).Select(t => (BandColour?)t.Key).FirstOrDefault();
        if (ohms is not { Unit: Unit.Ohm, Value: > 0 } || number.Significant.Length > 3 || power is < -3 or > 9 || letter is not { } tolerance)
        {
            return null;
        }

        var multiplier = (BandColour)(power < 0 ? (int)BandColour.White - power : power);
        return [.. number.Significant.PadRight(count, '0').Select(d => (BandColour)(d - '0')), multiplier, tolerance];
    }
}
