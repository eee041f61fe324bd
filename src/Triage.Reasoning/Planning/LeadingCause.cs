using Triage.Reasoning.Inference;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Planning;

/// <summary>The fault that is likelier than not, if there is one, and what is done about it.</summary>
internal sealed class LeadingCause
{
    private readonly FaultyRoot? _leader;
    private readonly HashSet<string> _checks = [];

    public LeadingCause(RepairProblem problem)
    {
        var chances = problem.Belief.SelectMany(h => h.Faulty.Distinct().Select(f => (Fault: f, h.Probability))).GroupBy(f => f.Fault, f => f.Probability);
        _leader = chances.Where(f => f.Sum() > 0.5).MaxBy(f => f.Sum())?.Key;
        _checks.UnionWith(problem.Options.OfType<FixOption>().Where(Clears).SelectMany(f => f.CheckedBy));
    }

    /// <summary>A fix that clears it, a check that such a fix names, or a direct measurement of its root.</summary>
    public bool IsMetBy(Option option) => option switch
    {
        _ when _checks.Contains(option.Id) => true,
        FixOption fix => Clears(fix),
        TestOption test => Measures(test.Reveals),
        _ => false,
    };

    private bool Clears(FixOption fix) => _leader is { } leader && ClearanceBuilder.Clearable(fix).Any(c => ClearanceBuilder.Named(c) == leader);

    private bool Measures(Finding finding) => _leader is { } leader && finding is { Nominal: true, Links.Length: > 0 } && finding.Links.All(l => l.Root == leader.Root);
}
