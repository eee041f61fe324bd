using System.Collections.Immutable;
using Triage.Measurements.Quantities;

namespace Triage.Service.Shown.Pictures;

/// <summary>Where a value lies between the two ends of a plot. Ohms, farads, henries and hertz run over decades.</summary>
/// <param name="Low">Left end, in the unit without prefix.</param>
/// <param name="High">Right end.</param>
/// <param name="Decades">Each decade takes the same room.</param>
internal sealed record PlotScale(double Low, double High, bool Decades)
{
    /// <summary>How many times its lower end an open-ended range is drawn to; it goes on beyond the edge.</summary>
    private const double Most = 1000;

    /// <summary>Room beside the outermost ends, as a share of the whole.</summary>
    private const double Margin = 0.05;

    /// <param name="ranges">Lower and upper ends that have to be seen.</param>
    /// <param name="shown">The reading; null when it is over range.</param>
    public static PlotScale Of(Unit unit, ImmutableArray<(double Low, double High)> ranges, double? shown)
    {
        if (unit is not (Unit.Ohm or Unit.Farad or Unit.Henry or Unit.Hertz))
            return Even([.. ranges.SelectMany(r => new[] { r.Low, r.High }), .. shown is { } value ? new[] { value } : []]);
        double[] ends = [.. ranges.SelectMany(r => new[] { r.Low, r.Low > 0 ? Math.Min(r.High, r.Low * Most) : r.High }).Append(shown ?? 0).Where(e => e > 0)];
        if (ends.Length == 0)
            return new(1, 10, true);
        var below = ranges.Any(r => r.Low <= 0) || shown <= 0 ? 1 : 0;
        return new(Math.Pow(10, Math.Floor(Math.Log10(ends.Min())) - below), Math.Pow(10, Math.Floor(Math.Log10(ends.Max())) + 1), true);
    }

    /// <summary>0 at the left end, 1 at the right one; what lies beyond is drawn at the end.</summary>
    public double At(double value) => Math.Clamp(
        Decades ? value <= Low ? 0 : Math.Log10(value / Low) / Math.Log10(High / Low) : (value - Low) / (High - Low), 0, 1);

    private static PlotScale Even(double[] ends)
    {
        var room = Math.Max(ends.Max() - ends.Min(), double.Epsilon * 1e10) * Margin;
        return new(ends.Min() - room, ends.Max() + room, false);
    }
}
