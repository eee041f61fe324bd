namespace Triage.Reasoning.Learning;

/// <summary>Fixed point of a map that converges by itself, reached sooner by squared extrapolation (Varadhan and Roland 2008, scheme S3).</summary>
internal static class FixedPoint
{
    const double Near = 1e-13;
    const int MostRounds = 500;

    internal static double[] Of(double[] start, Func<double[], double[]> map)
    {
        double[] x = start;
        for (int round = 0; round < MostRounds; round++)
        {
            double[] first = map(x), second = map(first);
            double[] step = Difference(first, x), bend = Difference(Difference(second, first), step);
            if (Largest(Difference(second, first)) <= Near) return second;
            double reach = Math.Max(1, Norm(step) / Norm(bend));
            double[] far = [.. x.Select((at, i) => at + 2 * reach * step[i] + reach * reach * bend[i])], after = map(far);
            // too far out the map may not lead back: then its own two steps
            x = Largest(Difference(after, far)) <= Largest(step) ? after : second;
        }
        return x;
    }

    static double[] Difference(double[] a, double[] b) => [.. a.Zip(b, (p, q) => p - q)];

    static double Largest(double[] differences) => differences.Length == 0 ? 0 : differences.Max(Math.Abs);

    static double Norm(double[] vector) => Math.Sqrt(vector.Sum(x => x * x));
}
