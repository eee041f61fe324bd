using System.Diagnostics;

namespace Triage.SearchBench;

/// <summary>How long single calls took, in milliseconds of the clock, and what they allocated.</summary>
/// <param name="KilobytesEach">Mean allocation of a call, in 1,000 bytes.</param>
internal sealed record Timed(double[] Sorted, double KilobytesEach)
{
    public double P50 => Quantile(0.5);

    public double P99 => Quantile(0.99);

    /// <summary>Every input some times over, after one round that is not counted.</summary>
    public static Timed Each<T>(IReadOnlyList<T> inputs, int rounds, Action<T> call)
    {
        foreach (var input in inputs)
            call(input);
        GC.Collect();
        var took = new List<double>(inputs.Count * rounds);
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var round = 0; round < rounds; round++)
        {
            foreach (var input in inputs)
                took.Add(Once(() => call(input)));
        }

        return new([.. took.Order()], (GC.GetAllocatedBytesForCurrentThread() - before) / 1e3 / took.Count);
    }

    public static double Once(Action call)
    {
        var start = Stopwatch.GetTimestamp();
        call();
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }

    private double Quantile(double share) => Sorted[Math.Min(Sorted.Length - 1, (int)(share * Sorted.Length))];
}
