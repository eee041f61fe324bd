namespace Triage.Benchmarks;

/// <summary>A short loop of its own: processor time of this process, which other processes disturb less than the clock does.</summary>
internal static class Measure
{
    /// <summary>Milliseconds of each of some calls, after a few to warm up.</summary>
    public static double[] Each<T>(IReadOnlyList<T> inputs, Action<T> run, int repeats = 1)
    {
        foreach (var input in inputs.Concat(inputs).Take(60))
        {
            run(input);
        }

        return [.. inputs.Select(input => Enumerable.Range(0, repeats).Min(_ => One(input, run)))];
    }

    public static double Median(IEnumerable<double> values) => Quantile(values, 0.5);

    public static double Quantile(IEnumerable<double> values, double share)
    {
        double[] sorted = [.. values.Order()];
        return sorted[Math.Min(sorted.Length - 1, (int)(share * sorted.Length))];
    }

    private static double One<T>(T input, Action<T> run)
    {
        var start = Environment.CpuUsage.UserTime;
        run(input);
        return (Environment.CpuUsage.UserTime - start).TotalMilliseconds;
    }
}
