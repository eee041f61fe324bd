using Triage.Measurements.Readings;

namespace Triage.Measurements.Instruments;

/// <summary>One line of an instrument's accuracy table, in the mode's unit without prefix.</summary>
/// <param name="Mode">What it measures.</param>
/// <param name="FullScale">Largest value it shows; beyond it is over range.</param>
/// <param name="Resolution">Size of one count.</param>
/// <param name="Percent">± percent of the reading.</param>
/// <param name="Counts">± counts on top.</param>
public sealed record InstrumentRange(ReadingMode Mode, double FullScale, double Resolution, double Percent, double Counts)
{
    /// <summary>± (percent of reading + counts · resolution), the usual form of a data sheet.</summary>
    public double Accuracy(double reading) => (Percent / 100 * Math.Abs(reading)) + (Counts * Resolution);
}
