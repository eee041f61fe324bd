using Triage.Notes.Kinds;

namespace Triage.Notes.Linting;

/// <summary>
/// Pairs of faults of one class that nothing offered there tells apart: no answer is at least three times as likely under one as under the other
/// ("substantial" evidence; Kass and Raftery, "Bayes factors", JASA 90 (1995), from memory). Faults that one fix mends need not be.
/// </summary>
internal sealed class ToldApart(ClassKnowledge known)
{
    private const double Ratio = 3, Least = 0.002;

    public IEnumerable<Remark> Not()
    {
        var checks = Findings().Concat(Tests()).ToList();
        var answers = known.Faults.ToDictionary(f => f.Id, f => checks.ConvertAll(c => c(f)));
        for (var i = 0; i < known.Faults.Count; i++)
        {
            var fault = known.Faults[i];
            var alike = known.Faults.Skip(i + 1).Where(other => !ShareAFix(fault, other) && !Differ(answers[fault.Id], answers[other.Id])).Select(o => o.Id).ToList();
            if (alike.Count > 0)
            {
                yield return new Remark(fault, null, KnowledgeProblems.NotToldApart(fault.Id, alike, known.Class.Id));
            }
        }
    }

    private static bool ShareAFix(Fault one, Fault other) => one.Mends.Select(m => m.Id).Intersect(other.Mends.Select(m => m.Id)).Any();

    private static bool Differ(List<double[]> one, List<double[]> other) =>
        one.Zip(other).Any(check => check.First.Zip(check.Second).Any(p =>
            Math.Max(p.First, p.Second) > Ratio * Math.Max(Least, Math.Min(p.First, p.Second))));

    /// <summary>Findings that somebody can be asked for, that complaints name, or that a test reveals.</summary>
    private IEnumerable<Func<Fault, double[]>> Findings()
    {
        var tested = known.Tests.SelectMany(t => t.Revealed).ToHashSet();
        return from finding in known.Findings
               where finding.Values.Length > 0 && (finding.Ask is not null || tested.Contains(finding.Id) || finding.Values.Any(v => !v.Says.IsEmpty))
               select (Func<Fault, double[]>)(fault => Chances(finding, fault));
    }

    private IEnumerable<Func<Fault, double[]>> Tests() =>
        from test in known.Tests
        where test.Revealed.IsEmpty && !test.Outcomes.IsEmpty
        let decided = test.Decides is { } id ? known.Index.Resolve(id) as Fault : null
        select (Func<Fault, double[]>)(fault => Chances(test, State(test, decided, fault)));

    private static string State(Test test, Fault? decided, Fault fault) => decided switch
    {
        null => ClassKnowledge.Measures(test, fault) ? fault.Mode ?? "otherwise" : "good",
        _ when decided.Id == fault.Id => "present",
        _ when fault.Mode is { } mode && fault.Part == decided.Part && fault.Role == decided.Role && test.Outcomes.Any(o => o.Given.ContainsKey(mode)) => mode,
        _ => "absent",
    };

    private static double[] Chances(Test test, string state) =>
        Scaled([.. test.Outcomes.Select(o => (o.Given.GetValueOrDefault(state) ?? o.Given.GetValueOrDefault("otherwise"))?.Probability ?? 1.0 / test.Outcomes.Length)]);

    /// <summary>Of each value where this is the only cause; what it leaves open shows as often as anyway, and is normal otherwise.</summary>
    private double[] Chances(Finding finding, Fault fault)
    {
        var shown = new double[finding.Values.Length];
        foreach (var link in fault.Shows.Where(s => known.Index.Resolve(s.Finding)?.Id == finding.Id))
        {
            var at = link.Value is null ? shown.Length - 1 : finding.Values.Select(v => v.Id).ToList().IndexOf(link.Value);
            shown[Math.Max(at, 0)] += link.Chance.Probability;
        }

        var open = Math.Max(0, 1 - shown.Sum());
        for (var v = 0; v < shown.Length; v++)
        {
            shown[v] += open * (finding.Values[v].Anyway?.Probability ?? 0);
        }

        shown[0] += Math.Max(0, 1 - shown.Sum());
        return Scaled(shown);
    }

    private static double[] Scaled(double[] chances) => chances.Sum() is var sum and > 0 ? [.. chances.Select(c => c / sum)] : chances;
}
