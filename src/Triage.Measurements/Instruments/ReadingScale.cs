using Triage.Measurements.Quantities;
using Triage.Measurements.Readings;

namespace Triage.Measurements.Instruments;

/// <summary>
/// The axis on which values are spread: logarithmic where they run over decades (ohms, farads, henries, hertz), otherwise linear.
/// </summary>
/// <param name="Logarithmic">Whether positions are natural logarithms.</param>
/// <param name="Least">Smallest value told apart from zero; readings below it count as it.</param>
/// <param name="Span">Length of the whole axis, in positions.</param>
internal readonly record struct ReadingScale(bool Logarithmic, double Least, double Span)
{
    public static ReadingScale For(Unit unit, ReadingMode mode, Instrument instrument, double largest)
    {
        var finest = instrument.Finest(mode) ?? Math.Max(Math.Abs(largest), 1) / 2000;
        var most = instrument.RangeFor(mode, largest)?.FullScale ?? instrument.Largest(mode)?.FullScale ?? Math.Max(Math.Abs(largest), finest);
        var logarithmic = unit is Unit.Ohm or Unit.Farad or Unit.Henry or Unit.Hertz;
        return logarithmic
            ? new ReadingScale(true, finest / 2, Math.Log((instrument.Largest(mode)?.FullScale ?? most) / (finest / 2)))
            : new ReadingScale(false, finest / 2, 2 * most);
    }

    public double At(double value) => Logarithmic ? Math.Log(Math.Max(value, Least)) : value;
}
