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
    readonly ConcurrentDictionary<(string Fault, int Parent, int Child), double> given = new();

    internal DependentFindings(Estimates estimates, Dependence strength, ImmutableArray<string> levels) => (this.estimates, Strength, this.levels) = (estimates, strength, levels);

    /// <summary>What was fitted to the epoch's jobs.</summary>
    public Dependence Strength { get; }

    /// <summary>ln P(findings | only this cause), not tempered. Findings and values that no note knows count nothing.</summary>
    public double LogLikelihood(string fault, IEnumerable<CheckedFinding> seen)
    {
        CheckedFinding[] known = [.. seen.Where(Known)];
        int[] parents = [.. Enumerable.Range(0, known.Length).Where(j => Strength.Parents.Contains(known[j].Finding))];
        return OneDependence.LogLikelihood([.. known.Select(s => Alone(fault, s))], parents, Strength.Parents.Length, (j, k) => Given(fault, known[j], known[k]));
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
               let jobs = estimates.Beside(fault, parent, child)[estimates.Known.NeededFinding(child.Finding).Values.IndexOf(child.Value)]
               let alone = Alone(fault, child)
               let usual = Given(fault, parent, child)
               where jobs >= ComeTogether.FewestJobs && alone <= ComeTogether.RareAlone && usual >= ComeTogether.UsualBeside
               orderby usual / alone descending, parent.Finding, child.Finding
               select new ComeTogether(parent, child, jobs),
        ];
    }

    bool Known(CheckedFinding seen) => estimates.Known.Number(seen) is not null;

    double Alone(string fault, CheckedFinding seen) => alone.GetOrAdd((fault, Number(seen)), _ => Row(fault, seen.Finding)[Value(seen)]);

    double Given(string fault, CheckedFinding parent, CheckedFinding child) => given.GetOrAdd((fault, Number(parent), Number(child)), _ => OneDependence.Conditional(
        Row(fault, child.Finding), estimates.LinkCounts(estimates.Known.NeededFinding(child.Finding), fault, TallyKey.Everywhere),
        estimates.Beside(fault, parent, child), Strength.Kappa, Value(child)));

    double[] Row(string fault, string finding) => SeenAlone.Chances(SeenAlone.Of(estimates, fault, finding, levels));

    int Number(CheckedFinding seen) => estimates.Known.Number(seen)!.Value;

    int Value(CheckedFinding seen) => estimates.Known.NeededFinding(seen.Finding).Values.IndexOf(seen.Value);
}

/// <summary>Two findings that usually come together when one cause is there.</summary>
/// <param name="Jobs">Past jobs, by weight, that show it.</param>
public sealed record ComeTogether(CheckedFinding First, CheckedFinding Second, double Jobs)
{
    // set by hand
    internal const double FewestJobs = 5, RareAlone = 0.6, UsualBeside = 0.8;
}
