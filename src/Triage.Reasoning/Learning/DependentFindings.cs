using System.Collections.Concurrent;
using System.Collections.Immutable;

namespace Triage.Reasoning.Learning;

/// <summary>
/// P(findings | one cause alone) where past jobs show that findings depend on each other beyond the cause, by <see cref="OneDependence"/>. Its
/// logarithm is to be divided by <see cref="Dependence.Temperature"/> when causes are ranked; with that it is no longer one joint
/// model, so it ranks single causes and does not belong into look-ahead.
/// </summary>
public sealed class DependentFindings
{
    readonly Estimates estimates;
    readonly ImmutableArray<string> levels;

    // asked for again and again while evidence is left out and in; what they are never changes
    readonly ConcurrentDictionary<(string Fault, int Value), double> alone = new();
    readonly ConcurrentDictionary<(string Fault, int Parent, int Child), (double Seen, double Of)> pairs = new();

    internal DependentFindings(Estimates estimates, Dependence strength, ImmutableArray<string> levels) => (this.estimates, Strength, this.levels) = (estimates, strength, levels);

    /// <summary>What was fitted to the epoch's jobs.</summary>
    public Dependence Strength { get; }

    /// <summary>ln P(findings | only this cause), not tempered. Findings and values that no note knows count nothing.</summary>
    public double LogLikelihood(string fault, IEnumerable<CheckedFinding> seen)
    {
        CheckedFinding[] known = [.. seen.Where(Known)];
        int[] parents = [.. Enumerable.Range(0, known.Length).Where(j => Strength.Parents.Contains(known[j].Finding))];
        int[] values = [.. known.Select(s => estimates.Known.Number(s)!.Value)];
        return OneDependence.LogLikelihood(
            [.. known.Select((s, i) => alone.GetOrAdd((fault, values[i]), _ => Alone(fault, s)))], parents, Strength.Parents.Length, Strength.Kappa,
            (j, k) => pairs.GetOrAdd((fault, values[j], values[k]), _ => estimates.Beside(fault, known[j], known[k])));
    }

    /// <summary>Pairs among the findings that this cause shows together far more often than each alone: the second is hardly news after the first.</summary>
    public ImmutableArray<ComeTogether> Together(string fault, IEnumerable<CheckedFinding> seen)
    {
        CheckedFinding[] known = [.. seen.Where(Known)];
        return
        [
            .. from parent in known.Where(s => Strength.Parents.Contains(s.Finding))
               from child in known
               where parent.Finding != child.Finding
               let beside = estimates.Beside(fault, parent, child)
               let alone = Alone(fault, child)
               let usual = OneDependence.Conditional(alone, Strength.Kappa, beside)
               where beside.Seen >= ComeTogether.FewestJobs && alone <= ComeTogether.RareAlone && usual >= ComeTogether.UsualBeside
               orderby usual / alone descending, parent.Finding, child.Finding
               select new ComeTogether(parent, child, beside.Seen),
        ];
    }

    bool Known(CheckedFinding seen) => estimates.Known.Number(seen) is not null;

    double Alone(string fault, CheckedFinding seen) => LinkValue.Of(estimates, fault, seen, levels).Without(0);
}

/// <summary>Two findings that usually come together when one cause is there.</summary>
/// <param name="Jobs">Past jobs, by weight, that show it.</param>
public sealed record ComeTogether(CheckedFinding First, CheckedFinding Second, double Jobs)
{
    // set by hand
    internal const double FewestJobs = 5, RareAlone = 0.6, UsualBeside = 0.8;
}
