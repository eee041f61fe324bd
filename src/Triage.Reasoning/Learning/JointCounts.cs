namespace Triage.Reasoning.Learning;

/// <summary>How often two values were seen together with a cause, in jobs; with itself: how often the value was seen.</summary>
internal sealed class JointCounts
{
    readonly int values;
    readonly double[]?[][] rows;

    internal JointCounts(int causes, int values, IEnumerable<SoleCause> cases)
    {
        this.values = values;
        rows = [.. Enumerable.Range(0, causes).Select(_ => new double[]?[values])];
        foreach (SoleCause one in cases) Add(one);
    }

    /// <summary>Counts of every value beside this one; null when the cause never showed it.</summary>
    internal double[]? Beside(int cause, int value) => rows[cause][value];

    /// <summary>How often the cause showed each value.</summary>
    internal double[] Alone(int cause) => [.. rows[cause].Select((row, value) => row?[value] ?? 0)];

    void Add(SoleCause one)
    {
        foreach (int j in one.Values)
        {
            double[] row = rows[one.Cause][j] ??= new double[values];
            foreach (int k in one.Values) row[k] += one.Weight;
        }
    }
}

/// <summary>A job with one sure cause.</summary>
/// <param name="Cause">Index of the fault.</param>
/// <param name="Values">Numbers of the values seen.</param>
/// <param name="Weight">Grade × trust.</param>
internal readonly record struct SoleCause(int Cause, int[] Values, double Weight);
