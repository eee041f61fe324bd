namespace Triage.Measurements.Instruments;

/// <summary>What a voltmeter does to what it measures: a divider of source and input resistance (Ohm's law).</summary>
public static class Loading
{
    /// <summary>What a meter shows of an unloaded voltage: U · Ri / (Ri + Rs). 10 MΩ on 1 MΩ reads 9.1 % low.</summary>
    /// <param name="volts">Voltage without the meter.</param>
    /// <param name="sourceOhms">Resistance the voltage comes from, 0 or more.</param>
    /// <param name="inputOhms">Input resistance of the meter, above 0.</param>
    public static double Shown(double volts, double sourceOhms, double inputOhms) => volts * Share(sourceOhms, inputOhms);

    /// <summary>The voltage without the meter, from what it shows.</summary>
    public static double Unloaded(double shown, double sourceOhms, double inputOhms) => shown / Share(sourceOhms, inputOhms);

    private static double Share(double sourceOhms, double inputOhms)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(sourceOhms);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(inputOhms);
        return inputOhms / (inputOhms + sourceOhms);
    }
}
