using Triage.Reasoning.Inference;

namespace Triage.Reasoning.Planning;

/// <summary>
/// What one fix does to a belief (Breese &amp; Heckerman 1996: actions that change the configuration). Each covered fault goes
/// independently with its own chance; the unit works when nothing is left.
/// </summary>
/// <param name="Moves">The sets it touches, smallest first, so that mass that arrives in a set is not moved twice.</param>
internal sealed record Clearance(ClearedSet[] Moves)
{
    /// <summary>Turns a belief into the weights of what remains if the unit still fails; they sum to less by P(works).</summary>
    public void Apply(double[] weights)
    {
        foreach (var move in Moves)
        {
            var weight = weights[move.Set];
            if (weight == 0)
            {
                continue;
            }

            weights[move.Set] = 0;
            foreach (var (left, chance) in move.Left)
            {
                weights[left] += weight * chance;
            }
        }
    }

    /// <summary>P(the unit works after it).</summary>
    public double Works(double[] weights)
    {
        var works = 0.0;
        foreach (var move in Moves)
        {
            works += weights[move.Set] * move.Works;
        }

        return works;
    }
}

/// <summary>What a fix makes of one set of faults.</summary>
/// <param name="Set">The set before.</param>
/// <param name="Works">P(nothing is left).</param>
/// <param name="Share">Expected share of its faults that go: what the fix is worth in p/c; equals Works for a single fault.</param>
/// <param name="Left">The sets that can be left, with their chances.</param>
internal sealed record ClearedSet(int Set, double Works, double Share, (int Set, double Chance)[] Left);

internal sealed class ClearanceBuilder(FixOption fix)
{
    private readonly Dictionary<FaultyRoot, double> _chance = fix.Clears
        .Where(c => c.Works * c.Holds > 0)
        .ToDictionary(c => new FaultyRoot(c.Root, c.State), c => c.Works * c.Holds);

    private readonly List<ClearedSet> _moves = [];

    public IEnumerable<FaultyRoot> Covered => _chance.Keys;

    public void Add(int set, FaultyRoot[] faults, Func<FaultyRoot[], int> number)
    {
        var chances = Array.ConvertAll(faults, f => _chance.GetValueOrDefault(f));
        var works = chances.Aggregate(1.0, (product, c) => product * c);
        var share = faults.Length == 0 ? 1 : chances.Average();
        var left = Remainders(faults, chances, 0, [], 1).Select(r => (number(r.Left), r.Chance)).ToArray();
        _moves.Add(new ClearedSet(set, works, share, left));
    }

    public Clearance Build(Func<int, int> size) => new([.. _moves.OrderBy(m => size(m.Set))]);

    private static IEnumerable<(FaultyRoot[] Left, double Chance)> Remainders(
        FaultyRoot[] faults, double[] chances, int next, FaultyRoot[] left, double chance)
    {
        if (chance == 0)
        {
            return [];
        }

        if (next == faults.Length)
        {
            return left.Length == 0 ? [] : [(left, chance)];
        }

        return Remainders(faults, chances, next + 1, [.. left, faults[next]], chance * (1 - chances[next]))
            .Concat(Remainders(faults, chances, next + 1, left, chance * chances[next]));
    }
}
