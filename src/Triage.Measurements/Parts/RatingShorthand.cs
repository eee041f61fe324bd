using System.Collections.Frozen;
using System.Globalization;
using System.Text.RegularExpressions;
using Triage.Measurements.Quantities;

namespace Triage.Measurements.Parts;

/// <summary>
/// Ratings as the trade writes them: "47/16" is 47 µF 16 V, "100n/63", "0.1/5.5" is 0.1 F 5.5 V, "10k", "T1A", "F500mA", "1/4W".
/// A bare capacitance is in microfarads, except below 10 at 2.5, 2.7, 3.6 or 5.5 V: those are double-layer voltages and the number
/// is in farads (common practice, no source). What was assumed is said in <see cref="PartRating.Assumed"/>.
/// </summary>
public static partial class RatingShorthand
{
    private static readonly FrozenSet<double> DoubleLayerVolts = new[] { 2.5, 2.7, 3.6, 5.5 }.ToFrozenSet();

    private static readonly FrozenDictionary<string, FuseSpeed> Speeds = new Dictionary<string, FuseSpeed>
    {
        ["FF"] = FuseSpeed.VeryQuick, ["F"] = FuseSpeed.Quick, ["M"] = FuseSpeed.Medium, ["T"] = FuseSpeed.TimeLag, ["TT"] = FuseSpeed.LongTimeLag,
    }.ToFrozenDictionary();

    [GeneratedRegex(@"^(?<value>[^/\s]+)/(?<volts>[0-9]+([.,][0-9]+)?)\s*[Vv]?$", RegexOptions.ExplicitCapture)]
    private static partial Regex ValueOverVolts { get; }

    [GeneratedRegex(@"^(?<speed>FF|F|M|TT|T)\s*(?<current>[0-9]+([.,][0-9]+)?\s*m?A)$", RegexOptions.ExplicitCapture)]
    private static partial Regex Fuse { get; }

    [GeneratedRegex(@"^1/(?<parts>[248]|10|16)\s*[Ww]$", RegexOptions.ExplicitCapture)]
    private static partial Regex Fraction { get; }

    /// <summary>Null when the text is not a rating.</summary>
    public static PartRating? Read(string text)
    {
        var trimmed = text.Trim();
        if (ValueOverVolts.Match(trimmed) is { Success: true } capacitor)
        {
            return Capacitor(capacitor.Groups["value"].Value, capacitor.Groups["volts"].Value);
        }

        if (Fuse.Match(trimmed) is { Success: true } fuse && ValueText.Read(fuse.Groups["current"].Value, Unit.Ampere).Quantity is { } current)
        {
            return new PartRating { Amperes = current.Value, Speed = Speeds[fuse.Groups["speed"].Value] };
        }

        if (Fraction.Match(trimmed) is { Success: true } power)
        {
            return new PartRating { Watts = 1 / double.Parse(power.Groups["parts"].Value, CultureInfo.InvariantCulture) };
        }

        return ValueText.Read(trimmed, null).Quantity is { Unit: Unit.Ohm or Unit.Farad or Unit.Henry, Value: > 0 } value
            ? new PartRating { Value = value }
            : null;
    }

    private static PartRating? Capacitor(string value, string voltage)
    {
        var volts = double.Parse(voltage.Replace(',', '.'), CultureInfo.InvariantCulture);
        if (ValueText.Read(value, null).Quantity is { Unit: Unit.Farad } spelled)
        {
            return new PartRating { Value = spelled, Volts = volts };
        }

        if (ValueText.Read(value, Unit.Farad).Quantity is not { Value: > 0 } bare || !char.IsAsciiDigit(value[^1]) || value.Any(char.IsLetter))
        {
            return null;
        }

        var farads = bare.Value < 10 && DoubleLayerVolts.Contains(volts);
        return farads
            ? new PartRating { Value = bare, Volts = volts, Assumed = $"taken as farads: {voltage} V is a double-layer rating" }
            : new PartRating { Value = ValueText.Read(value + "u", Unit.Farad).Quantity, Volts = volts, Assumed = "taken as microfarads" };
    }
}
