using System.Collections.Concurrent;
using System.Collections.Immutable;

namespace Triage.Reasoning.Learning;

/// <summary>How often each cause is met, by level: rates for the faults that are compared, proportions of their own for the rest.</summary>
internal sealed class SharesOfCauses(KnowledgeIndex known, Tally tally, Pooling pooling, LearnerSettings settings)
{
    readonly CauseCountsTree counts = new(known, tally, pooling.ShareLevels);

    // asked for at every question; what they are never changes
    readonly ConcurrentDictionary<string, Rates> rates = new();

    internal ImmutableDictionary<string, Estimate> Of(KnownScope scope, ImmutableArray<string> levels)
    {
        known.Check(scope);
        KnownFault[] apart = [.. known.Knowledge.Faults.Where(fault => fault.Apart && scope.Availability.GetValueOrDefault(fault.Id) > 0)];
        var shares = apart.ToImmutableDictionary(fault => fault.Id, fault => Apart(fault, levels), StringComparer.Ordinal).ToBuilder();
        ScopeFaults faults = known.Compared(scope);
        Rates here = RatesAt(levels);
        double compared = faults.Faults.Length == 0 ? 0 : Math.Max(0, 1 - shares.Values.Sum(share => share.Mean));
        foreach (var (f, mean, weight) in faults.Faults.Zip(here.Shares(faults), here.Weights(faults)))
            shares.Add(known.Knowledge.Faults[f].Id, new(compared * mean, weight));
        return shares.ToImmutable();
    }

    /// <summary>P(the cause is new or not listed for such a machine).</summary>
    internal Estimate Unlisted(ImmutableArray<string> levels) => Proportion(settings.Unlisted, levels, level =>
    {
        double fresh = tally[new(Sum.New, level)];
        return [fresh, Math.Max(0, tally[new(Sum.Explained, level)] - fresh)];
    });

    Estimate Apart(KnownFault fault, ImmutableArray<string> levels) => Proportion(new(fault.Share, fault.ShareWeight), levels, level =>
    {
        double had = tally[new(Sum.Share, level, fault.Id)];
        return [had, Math.Max(0, tally[new(Sum.Explained, level)] - tally[new(Sum.New, level)] - had)];
    });

    Estimate Proportion(Estimate prior, ImmutableArray<string> levels, Func<string, double[]> yesAndNo) =>
        Hierarchy.Of(Distribution.Beta(prior), new(tally, yesAndNo, pooling.ShareLevels), levels).Last[0];

    internal CauseCounts CountsAt(ImmutableArray<string> levels) => counts.At(levels.FirstOrDefault(TallyKey.Everywhere), levels.Length);

    /// <summary>Each level's rates lean on those of the level above.</summary>
    internal Rates RatesAt(ImmutableArray<string> levels) => rates.GetOrAdd(string.Join('\n', levels), _ =>
    {
        CauseCounts here = CountsAt(levels);
        return Rates.Fit(levels.IsEmpty
            ? known.NotedRates.Prior(pooling.ShareNotes)
            : RatePrior.Below(RatesAt(levels[1..]), here, Pooling.At(pooling.ShareLevels, levels.Length - 1), known.Scopes), here, known.Scopes);
    });

    /// <summary>
    /// Rates of the level above the most special one as its other members see them, every Λ as it is with all; null when there are no others, who
    /// alone can say how much members differ.
    /// </summary>
    internal Rates? AboveWithout(ImmutableArray<string> levels)
    {
        ImmutableArray<string>[] path = [.. Enumerable.Range(0, levels.Length + 1).Select(i => levels[(levels.Length - i)..])];
        CauseCounts[] left = [.. path.Select(CountsAt)];
        CauseCounts gone = left[^1].Nothing;
        for (int i = path.Length - 2; i >= 0; i--)
        {
            double kappa = Pooling.At(pooling.ShareLevels, i);
            CauseCounts without = left[i].Without(left[i + 1].Told(kappa), gone.Told(kappa));
            left[i + 1] = gone;
            gone = without;
            if (i == path.Length - 2 && gone.Had.Sum() <= 1e-9) return null;
        }
        left[0] = gone;
        Rates above = RatesAt([]).Under(RatesAt([]).Prior, left[0], known.Scopes);
        for (int i = 1; i < path.Length - 1; i++)
            above = RatesAt(path[i]).Under(RatePrior.Below(above, left[i], Pooling.At(pooling.ShareLevels, i - 1), known.Scopes), left[i], known.Scopes);
        return above;
    }
}
