using Triage.Reasoning.Inference;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Planning;

/// <summary>
/// Every set of faults that is believed in or that a fix can leave behind, numbered; a belief is then a flat array of weights.
/// </summary>
internal sealed class BeliefSpace
{
    private readonly List<FaultyRoot[]> _sets = [];
    private readonly Dictionary<FaultyRoot[], int> _numberOf = new(new SameFaults());

    public BeliefSpace(RepairProblem problem)
    {
        var prior = new List<double>();
        foreach (var hypothesis in problem.Belief)
        {
            var number = Number([.. hypothesis.Faulty.Distinct().OrderBy(f => f.Root).ThenBy(f => f.State)]);
            while (prior.Count < _sets.Count)
            {
                prior.Add(0);
            }

            prior[number] += hypothesis.Probability;
        }

        var clearances = problem.Options.Select(o => o is FixOption fix ? new ClearanceBuilder(fix) : null).ToArray();
        var byFault = Cover(clearances);
        for (var (set, added) = (0, new HashSet<int>()); set < _sets.Count; set++)
        {
            AddTo(set, clearances, byFault, added);
        }

        var total = prior.Sum();
        Prior = [.. prior.Select(p => p / total), .. Enumerable.Repeat(0.0, _sets.Count - prior.Count)];
        Clearances = [.. clearances.Select(c => c?.Build())];
        OneFaultEach = _sets.TrueForAll(s => s.Length == 1) && problem.Options.OfType<FixOption>().All(f => f.Clears.All(c => c.Leaves == 0));
    }

    /// <summary>Weights at the start, one per set, summing to 1.</summary>
    public double[] Prior { get; }

    /// <summary>What each option clears, by option; null for what is not a fix.</summary>
    public Clearance?[] Clearances { get; }

    /// <summary>No set holds several faults, nor a state that can be cleared in part: then no order of tests and fixes changes the belief.</summary>
    public bool OneFaultEach { get; }

    public int Count => _sets.Count;

    /// <summary>P(value | set): a row for each value.</summary>
    public LikelihoodRow[] Likelihood(Finding finding, ILookup<FaultyRoot, int> setsWith) =>
        new OutcomeLikelihood(finding).Over(setsWith, set => _sets[set]);

    /// <summary>Which sets the fixes together can clear.</summary>
    public bool[] Curable(IEnumerable<FixOption> fixes)
    {
        var clearings = fixes.SelectMany(ClearanceBuilder.Clearable).ToList();
        var clearable = clearings.Where(c => c.Leaves == 0).Select(ClearanceBuilder.Named).ToHashSet();
        while (clearings.RemoveAll(c => c.Leaves != 0 && clearable.Contains(new(c.Root, c.Leaves)) && clearable.Add(ClearanceBuilder.Named(c))) > 0)
        {
        }

        return [.. _sets.Select(s => Array.TrueForAll(s, clearable.Contains))];
    }

    /// <summary>The fixes that touch each set with the share each clears: entries From[set] to From[set + 1].</summary>
    public (int[] From, (int Fix, double Share)[] Touches) Touches(int[] fixes)
    {
        var from = new int[Count + 1];
        foreach (var set in fixes.SelectMany(f => Clearances[f]!.Sets))
        {
            from[set + 1]++;
        }

        for (var set = 0; set < Count; set++)
        {
            from[set + 1] += from[set];
        }

        var touches = new (int, double)[from[Count]];
        int[] next = [.. from];
        foreach (var fix in fixes)
        {
            var clearance = Clearances[fix]!;
            for (var entry = 0; entry < clearance.Sets.Length; entry++)
            {
                touches[next[clearance.Sets[entry]]++] = (fix, clearance.Share[entry]);
            }
        }

        return (from, touches);
    }

    /// <summary>By set: the fixes that can change it, with the chance that they do.</summary>
    public IEnumerable<(int Fix, double Chance)>[] Attempts(int[] fixes)
    {
        var attempts = fixes.SelectMany(fix => Clearances[fix]!.Changes().Select(c => (c.Set, fix, c.Chance))).ToLookup(a => a.Set, a => (a.fix, a.Chance));
        return [.. Enumerable.Range(0, Count).Select(set => attempts[set])];
    }

    public ILookup<FaultyRoot, int> SetsWith() =>
        Enumerable.Range(0, Count).SelectMany(s => _sets[s].Select(f => (Fault: f, Set: s))).ToLookup(x => x.Fault, x => x.Set);

    private static Dictionary<FaultyRoot, List<int>> Cover(ClearanceBuilder?[] clearances)
    {
        var cover = new Dictionary<FaultyRoot, List<int>>();
        for (var option = 0; option < clearances.Length; option++)
        {
            foreach (var fault in clearances[option]?.Covered ?? [])
            {
                if (!cover.TryGetValue(fault, out var by))
                {
                    cover[fault] = by = [];
                }

                by.Add(option);
            }
        }

        return cover;
    }

    private void AddTo(int set, ClearanceBuilder?[] clearances, Dictionary<FaultyRoot, List<int>> byFault, HashSet<int> added)
    {
        added.Clear();
        var faults = _sets[set];
        foreach (var fault in faults)
        {
            foreach (var option in byFault.GetValueOrDefault(fault, []).Where(added.Add))
            {
                clearances[option]!.Add(set, faults, Number);
            }
        }

        for (var option = 0; faults.Length == 0 && option < clearances.Length; option++)
        {
            clearances[option]?.Add(set, faults, Number);
        }
    }

    private int Number(FaultyRoot[] set)
    {
        if (!_numberOf.TryGetValue(set, out var number))
        {
            _numberOf[set] = number = _sets.Count;
            _sets.Add(set);
        }

        return number;
    }

    private sealed class SameFaults : IEqualityComparer<FaultyRoot[]>
    {
        public bool Equals(FaultyRoot[]? x, FaultyRoot[]? y) => x.AsSpan().SequenceEqual(y);

        public int GetHashCode(FaultyRoot[] faults)
        {
            var hash = new HashCode();
            foreach (var fault in faults)
            {
                hash.Add(fault);
            }

            return hash.ToHashCode();
        }
    }
}
