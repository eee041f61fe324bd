namespace Triage.Reasoning.Inference;

/// <summary>A non-negative number with an exponent of its own, for what a double would take for zero.</summary>
internal readonly record struct Wide
{
    private Wide(double mantissa, long exponent) => (Mantissa, Exponent) = (mantissa, exponent);

    public static Wide One { get; } = Of(1);

    /// <summary>In 1 … 2, or 0.</summary>
    private double Mantissa { get; }

    private long Exponent { get; }

    public bool IsZero => Mantissa == 0;

    public double Log => Math.Log(Mantissa) + Exponent * Math.Log(2);

    public static Wide Of(double value) => Normal(value, 0);

    public static Wide OfLog(double log)
    {
        if (double.IsNegativeInfinity(log))
        {
            return default;
        }

        var exponent = (long)Math.Floor(log / Math.Log(2));
        return Normal(Math.Exp(log - exponent * Math.Log(2)), exponent);
    }

    public static Wide operator *(Wide a, Wide b) => Normal(a.Mantissa * b.Mantissa, a.Exponent + b.Exponent);

    public static Wide operator +(Wide a, Wide b)
    {
        if (a.IsZero || b.IsZero)
        {
            return a.IsZero ? b : a;
        }

        var (most, least) = a.Exponent >= b.Exponent ? (a, b) : (b, a);
        return Normal(most.Mantissa + Math.ScaleB(least.Mantissa, (int)Math.Max(least.Exponent - most.Exponent, -2000)), most.Exponent);
    }

    public static double Ratio(Wide a, Wide b) =>
        a.IsZero ? 0 : Math.ScaleB(a.Mantissa / b.Mantissa, (int)Math.Clamp(a.Exponent - b.Exponent, -5000, 5000));

    private static Wide Normal(double value, long exponent)
    {
        if (value == 0)
        {
            return default;
        }

        var shift = Math.ILogB(value);
        return new(Math.ScaleB(value, -shift), exponent + shift);
    }
}
