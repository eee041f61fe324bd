namespace Triage.Reasoning.Learning;

/// <summary>How often independent causes meet.</summary>
internal static class IndependentCauses
{
    /// <summary>Solves 1 − s / (eˢ − 1) = share of doubles for s by bisection: 0.05 gives 0.1017, close to twice the share.</summary>
    internal static double Factor(double doubles)
    {
        double low = 0, high = 50;
        for (int i = 0; i < 100; i++)
        {
            double middle = (low + high) / 2;
            if (Doubles(middle) < doubles) low = middle;
            else high = middle;
        }
        return (low + high) / 2;
    }

    static double Doubles(double s) => s < 1e-5 ? s / 2 : 1 - s / (Math.Exp(s) - 1);
}
