using System.Diagnostics;

namespace Triage.SearchBench;

/// <summary>How long calls took, in milliseconds of the clock, and what they allocated on all threads.</summary>
/// <param name="Calls">For each input, each time it was called.</param>
/// <param name="KilobytesEach">Mean allocation of a call with each input, in 1,000 bytes.</param>
internal sealed record Timed(double[][] Calls, double[] KilobytesEach)
{
    public double P50 => Quantile(Calls.Select(Enumerable.Min), 0.5);

    /// <summary>Over the inputs, each the best of its calls: what else runs on the machine disturbs it least.</summary>
    public double P99 => Quantile(Calls.Select(Enumerable.Min), 0.99);

    public double P99OfAll => Quantile(Calls.SelectMany(c => c), 0.99);

    public double Kilobytes => KilobytesEach.Average();

    /// <summary>Every input some times over, after one round that is not counted.</summary>
    public static Timed Each<T>(IReadOnlyList<T> inputs, int rounds, Action<T> call)
    {
        foreach (var input in inputs)
            call(input);
        GC.Collect();
        var timed = new Timed([.. inputs.Select(_ => new double[rounds])], new double[inputs.Count]);
        for (var round = 0; round < rounds; round++)
        {
            for (var i = 0; i < inputs.Count; i++)
            {
                var before = GC.GetTotalAllocatedBytes();
                timed.Calls[i][round] = Once(() => call(inputs[i]));
                timed.KilobytesEach[i] += (GC.GetTotalAllocatedBytes() - before) / 1e3 / rounds;
            }
        }

        return timed;
    }

    /// <summary>Some of the inputs.</summary>
    public Timed Only(IEnumerable<int> inputs)
    {
        int[] chosen = [.. inputs];
        return new([.. chosen.Select(i => Calls[i])], [.. chosen.Select(i => KilobytesEach[i])]);
    }

    public static double Once(Action call)
    {
        var start = Stopwatch.GetTimestamp();
        call();
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }

    private static double Quantile(IEnumerable<double> times, double share)
    {
        double[] sorted = [.. times.Order()];
        return sorted[Math.Min(sorted.Length - 1, (int)(share * sorted.Length))];
    }
}
