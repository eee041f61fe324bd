using System.Globalization;

namespace Triage.Measurements.Quantities;

/// <summary>A number as its decimal digits, so that moving the point loses nothing.</summary>
/// <param name="Sign">"-" or empty.</param>
/// <param name="Significant">Digits without leading or trailing zeros; "0" for zero.</param>
/// <param name="Power">Power of ten of the first digit.</param>
internal readonly record struct Digits(string Sign, string Significant, int Power)
{
    public bool IsZero => Significant == "0";

    /// <summary>The shortest digits that read back as the same double, or that many significant ones.</summary>
    public static Digits Of(double value, int? significant)
    {
        if (significant is { } wanted)
        {
            value = double.Parse(value.ToString($"E{Math.Max(wanted, 1) - 1}", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        }

        if (value == 0)
        {
            return new Digits("", "0", 0);
        }

        var parts = Math.Abs(value).ToString("R", CultureInfo.InvariantCulture).Split('E');
        var power = parts.Length > 1 ? int.Parse(parts[1], CultureInfo.InvariantCulture) : 0;
        var point = parts[0].IndexOf('.', StringComparison.Ordinal) is >= 0 and var at ? at : parts[0].Length;
        var all = parts[0].Replace(".", "", StringComparison.Ordinal);
        var trimmed = all.TrimStart('0');
        return new Digits(value < 0 ? "-" : "", trimmed.TrimEnd('0'), power + point - 1 - (all.Length - trimmed.Length));
    }

    /// <summary>The number divided by ten to the exponent.</summary>
    public string Shifted(int exponent)
    {
        if (IsZero)
        {
            return "0";
        }

        var whole = Power - exponent + 1;
        if (whole <= 0)
        {
            return $"{Sign}0.{new string('0', -whole)}{Significant}";
        }

        return whole >= Significant.Length
            ? Sign + Significant.PadRight(whole, '0')
            : $"{Sign}{Significant[..whole]}.{Significant[whole..]}";
    }
}
