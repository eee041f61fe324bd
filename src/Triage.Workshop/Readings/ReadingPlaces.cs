using Triage.Measurements.Readings;

namespace Triage.Workshop.Readings;

/// <summary>Where on a part the leads were.</summary>
internal static class ReadingPlaces
{
    private static readonly string[] Grounds = ["ground", "gnd", "chassis", "earth", "0 v", "0v", "minus rail"];

    public static bool IsGround(string? place) => place is not null && Grounds.Contains(place.Trim().ToLowerInvariant());

    /// <summary>"b-e", "out"; empty when nothing but the part is named. Reversed leads are said as they lay.</summary>
    public static string Terminal(Reading reading, MeasuredPart part)
    {
        var (from, to) = (Left(reading.From, part), reading.To is null || IsGround(reading.To) ? "" : Left(reading.To, part));
        if (to.Length == 0 || from.Length == 0)
            return from + to;
        return reading.LeadsReversed ? $"{to}-{from}" : $"{from}-{to}";
    }

    private static string Left(string place, MeasuredPart part) =>
        part.Designator is null ? ""
        : string.Join(' ', place.ToLowerInvariant().Split(' ', StringSplitOptions.RemoveEmptyEntries).Where(w => !w.Equals(part.Designator, StringComparison.OrdinalIgnoreCase)));
}
