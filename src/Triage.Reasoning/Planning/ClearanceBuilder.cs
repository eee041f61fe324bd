using Triage.Reasoning.Inference;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Planning;

/// <summary>Finds what one fix can leave of each set of faults.</summary>
internal sealed class ClearanceBuilder(FixOption fix)
{
    private readonly Dictionary<FaultyRoot, double> _chance = new(Clearable(fix).Select(c => KeyValuePair.Create(Named(c), c.Works * c.Holds)));

    private readonly Dictionary<FaultyRoot, FaultyRoot> _leaves = new(Clearable(fix).Where(c => c.Leaves != 0)
        .Select(c => KeyValuePair.Create(Named(c), new FaultyRoot(c.Root, c.Leaves))));

    private readonly List<Entry> _entries = [];

    public IEnumerable<FaultyRoot> Covered => _chance.Keys;

    /// <summary>What a fix can clear for good.</summary>
    public static IEnumerable<Clearing> Clearable(FixOption fix) => fix.Clears.Where(c => c.Works * c.Holds > 0);

    public static FaultyRoot Named(Clearing clearing) => new(clearing.Root, clearing.State);

    public void Add(int set, FaultyRoot[] faults, Func<FaultyRoot[], int> number)
    {
        var chances = Array.ConvertAll(faults, f => _chance.GetValueOrDefault(f));
        var partly = faults.Count(_leaves.ContainsKey);
        var works = partly > 0 ? 0 : chances.Aggregate(1.0, (product, c) => product * c);
        var share = faults.Length == 0 ? 1 : chances.Average();
        var left = new List<(int, double)>();
        Remainders(faults, chances, 0, [], 1, (remaining, chance) => left.Add((number(remaining), chance)));
        _entries.Add(new Entry(set, (faults.Length, partly), works, share, left));
    }

    public Clearance Build()
    {
        var entries = _entries.OrderBy(e => e.Size).ToArray();
        var from = new int[entries.Length + 1];
        for (var entry = 0; entry < entries.Length; entry++)
        {
            from[entry + 1] = from[entry] + entries[entry].Left.Count;
        }

        return new Clearance
        {
            Sets = Array.ConvertAll(entries, e => e.Set),
            Works = Array.ConvertAll(entries, e => e.Works),
            Share = Array.ConvertAll(entries, e => e.Share),
            From = from,
            Left = [.. entries.SelectMany(e => e.Left.Select(l => l.Set))],
            Chance = [.. entries.SelectMany(e => e.Left.Select(l => l.Chance))],
        };
    }

    private void Remainders(
        FaultyRoot[] faults, double[] chances, int next, FaultyRoot[] left, double chance, Action<FaultyRoot[], double> found)
    {
        if (chance == 0)
        {
            return;
        }

        if (next < faults.Length)
        {
            Remainders(faults, chances, next + 1, [.. left, faults[next]], chance * (1 - chances[next]), found);
            Remainders(faults, chances, next + 1, _leaves.TryGetValue(faults[next], out var rest) ? [.. left, rest] : left, chance * chances[next], found);
        }
        else if (left.Length > 0)
        {
            found(left, chance);
        }
    }

    private sealed record Entry(int Set, (int Faults, int Partly) Size, double Works, double Share, List<(int Set, double Chance)> Left);
}
