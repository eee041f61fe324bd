namespace MadeUpJobs;

/// <summary>What a seeded source of chance is asked for.</summary>
internal static class Draws
{
    public static bool Happens(this Random random, double chance) => random.NextDouble() < chance;

    public static T Any<T>(this Random random, IReadOnlyList<T> of) => of[random.Next(of.Count)];

    /// <summary>One of them, by weights that need not sum to 1.</summary>
    public static T Weighted<T>(this Random random, IReadOnlyList<T> of, Func<T, double> weight)
    {
        var left = random.NextDouble() * of.Sum(weight);
        foreach (var one in of)
        {
            left -= weight(one);
            if (left <= 0)
                return one;
        }

        return of[^1];
    }

    public static T[] Shuffled<T>(this Random random, IEnumerable<T> of)
    {
        T[] all = [.. of];
        random.Shuffle(all);
        return all;
    }

    /// <summary>A factor around 1, always above 0.</summary>
    /// <param name="spread">Standard deviation of its logarithm.</param>
    public static double Around(this Random random, double spread) =>
        Math.Exp(spread * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble()));
}
