using System.Diagnostics;

namespace Triage.Benchmarks;

/// <summary>A short loop of its own: processor time of this process, which other processes disturb less than the clock does.</summary>
internal static class Measure
{
    /// <summary>Median milliseconds of a call over inputs, each the best of some, after a warm-up.</summary>
    public static double Median<T>(IReadOnlyList<T> inputs, Func<T, object> run, int best = 3) => Quantile(Each(inputs, run, best), 0.5);

    /// <summary>Milliseconds for each input, the best of some, after a warm-up.</summary>
    public static double[] Each<T>(IReadOnlyList<T> inputs, Func<T, object> run, int best = 3)
    {
        for (var i = 0; i < 40; i++)
        {
            run(inputs[i % inputs.Count]);
        }

        return [.. inputs.Select(input => Enumerable.Range(0, best).Min(_ => One(input, run)))];
    }

    /// <summary>Milliseconds on the clock for each input, the best of some, after <see cref="Each"/> has warmed up: what one waits for where both cores work.</summary>
    public static double[] Waited<T>(IReadOnlyList<T> inputs, Func<T, object> run, int best) => [.. inputs.Select(input => Enumerable.Range(0, best).Min(_ =>
    {
        var start = Stopwatch.GetTimestamp();
        run(input);
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }))];

    public static double Quantile(IEnumerable<double> values, double share)
    {
        double[] sorted = [.. values.Order()];
        return sorted[Math.Min(sorted.Length - 1, (int)(share * sorted.Length))];
    }

    /// <summary>Short calls are repeated until there is something to measure.</summary>
    private static double One<T>(T input, Func<T, object> run)
    {
        var (start, calls) = (Environment.CpuUsage.UserTime, 0);
        do
        {
            run(input);
            calls++;
        }
        while ((Environment.CpuUsage.UserTime - start).TotalMilliseconds < 2);
        return (Environment.CpuUsage.UserTime - start).TotalMilliseconds / calls;
    }
}
