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
        var touched = Enumerable.Range(0, faults.Length).Where(f => chances[f] > 0).ToArray();
        var (works, left) = (0.0, new List<(int, double)>(1 << touched.Length));
        for (var gone = 0; gone < 1 << touched.Length; gone++)
        {
            if (Chance(touched, gone, chances) is > 0 and var chance)
            {
                var remaining = gone == 0 ? faults : Remaining(faults, touched, gone);
                works += remaining.Length == 0 ? chance : 0;
                if (remaining.Length > 0)
                {
                    left.Add((gone == 0 ? set : number(remaining), chance));
                }
            }
        }

        var share = faults.Length == 0 ? 1 : chances.Sum() / faults.Length;
        _entries.Add(new Entry(set, (faults.Length, _leaves.Count == 0 ? 0 : faults.Count(_leaves.ContainsKey)), faults.Length == 0 ? 1 : works, share, left));
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

    /// <param name="gone">A bit for each touched fault that goes.</param>
    private static double Chance(int[] touched, int gone, double[] chances)
    {
        var chance = 1.0;
        for (var bit = 0; bit < touched.Length; bit++)
        {
            chance *= (gone >> bit & 1) == 1 ? chances[touched[bit]] : 1 - chances[touched[bit]];
        }

        return chance;
    }

    /// <summary>The faults that stay, or what those that go leave behind.</summary>
    private FaultyRoot[] Remaining(FaultyRoot[] faults, int[] touched, int gone)
    {
        var remaining = new List<FaultyRoot>(faults.Length);
        for (var f = 0; f < faults.Length; f++)
        {
            if (Array.IndexOf(touched, f) is var bit && (bit < 0 || (gone >> bit & 1) == 0))
            {
                remaining.Add(faults[f]);
            }
            else if (_leaves.TryGetValue(faults[f], out var rest))
            {
                remaining.Add(rest);
            }
        }

        return [.. remaining];
    }

    private sealed record Entry(int Set, (int Faults, int Partly) Size, double Works, double Share, List<(int Set, double Chance)> Left);
}
