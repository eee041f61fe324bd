namespace Triage.Measurements.Parts;

/// <summary>
/// Life of parts that wear out with heat, by the doubling rules of the trade: twice as long for every 10 °C less (Arrhenius' law in round
/// numbers), and for double-layer capacitors about 1.3 times for every 0.1 V less (common practice, no source). An order of magnitude, no promise.
/// </summary>
public static class LifeEstimate
{
    private const double DoublingCelsius = 10;
    private const double VoltageFactor = 1.3;
    private const double VoltageStep = 0.1;

    /// <summary>Hours of an aluminium electrolytic: rated hours · 2^((rated − actual) / 10 °C).</summary>
    /// <param name="ratedHours">Life at the rated temperature, above 0.</param>
    /// <param name="ratedCelsius">As printed: 85 or 105.</param>
    /// <param name="actualCelsius">Of the case in use.</param>
    public static double AluminiumElectrolytic(double ratedHours, double ratedCelsius, double actualCelsius)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(ratedHours);
        return ratedHours * Math.Pow(2, (ratedCelsius - actualCelsius) / DoublingCelsius);
    }

    /// <summary>Hours of a double-layer capacitor: the same, times 1.3^((rated − actual volts) / 0.1 V).</summary>
    /// <param name="ratedHours">Life at rated temperature and voltage, above 0.</param>
    /// <param name="ratedCelsius">As printed, often 70.</param>
    /// <param name="actualCelsius">Of the case in use.</param>
    /// <param name="ratedVolts">As printed.</param>
    /// <param name="actualVolts">Across it in use.</param>
    public static double DoubleLayer(double ratedHours, double ratedCelsius, double actualCelsius, double ratedVolts, double actualVolts) =>
        AluminiumElectrolytic(ratedHours, ratedCelsius, actualCelsius) * Math.Pow(VoltageFactor, (ratedVolts - actualVolts) / VoltageStep);
}
