namespace Triage.Reasoning.Planning;

/// <summary>
/// What one fix does to a belief (Breese &amp; Heckerman 1996: actions that change the configuration). Each covered fault goes
/// independently with its own chance; the unit works when nothing is left. Flat arrays, one entry for each set it touches.
/// </summary>
internal sealed class Clearance
{
    /// <summary>The sets it touches, smallest first and of equals those that are only partly cleared last, so that mass that arrives in a set is not moved twice.</summary>
    public required int[] Sets { get; init; }

    /// <summary>P(nothing is left).</summary>
    public required double[] Works { get; init; }

    /// <summary>Expected share of the faults of the set that go: what the fix is worth in p/c; equals Works for a single fault.</summary>
    public required double[] Share { get; init; }

    /// <summary>What set entry i can become stands in <see cref="Left"/> from From[i] to From[i + 1].</summary>
    public required int[] From { get; init; }

    public required int[] Left { get; init; }

    public required double[] Chance { get; init; }

    /// <summary>The sets it touches with the chance that it does not leave them as they are.</summary>
    public IEnumerable<(int Set, double Chance)> Changes() => Sets.Select((set, entry) =>
        (set, 1 - Enumerable.Range(From[entry], From[entry + 1] - From[entry]).Where(left => Left[left] == set).Sum(left => Chance[left])));

    /// <summary>Turns a belief into the weights of what remains if the unit still fails; they sum to less by P(works).</summary>
    public void Apply(double[] weights)
    {
        for (var entry = 0; entry < Sets.Length; entry++)
        {
            var weight = weights[Sets[entry]];
            weights[Sets[entry]] = 0;
            for (var left = From[entry]; weight > 0 && left < From[entry + 1]; left++)
            {
                weights[Left[left]] += weight * Chance[left];
            }
        }
    }

    /// <summary>Σ weight of a touched set · its entry: P(works), or what the fix is worth.</summary>
    public double Sum(double[] weights, double[] perEntry)
    {
        var sum = 0.0;
        for (var entry = 0; entry < Sets.Length; entry++)
        {
            sum += weights[Sets[entry]] * perEntry[entry];
        }

        return sum;
    }
}
