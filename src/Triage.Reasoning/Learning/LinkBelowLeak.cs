using System.Collections.Immutable;

namespace Triage.Reasoning.Learning;

/// <summary>A cause that, alone, shows a finding less often than no cause at all, beyond chance.</summary>
/// <param name="Fault">Fault id.</param>
/// <param name="Finding">Finding id.</param>
/// <param name="Seen">P(value at most x | only this cause), at the x where it is furthest above the leak.</param>
/// <param name="Leak">The same without any linked cause.</param>
public sealed record LinkBelowLeak(string Fault, string Finding, double Seen, double Leak)
{
    /// <summary>Every ordered link of a listed fault whose 95 % interval lies wholly below the leak.</summary>
    internal static ImmutableArray<LinkBelowLeak> Among(Estimates estimates, ImmutableArray<string> levels) =>
    [
        .. from fault in estimates.Known.Knowledge.Faults
           from finding in estimates.Known.Knowledge.Findings
           where !finding.Nominal
           let below = Of(fault.Id, finding.Id, estimates, levels)
           where below is not null
           select below,
    ];

    static LinkBelowLeak? Of(string fault, string finding, Estimates estimates, ImmutableArray<string> levels)
    {
        if (estimates.Seen(fault, finding, levels) is not { } seen) return null;
        double[] q = seen.Cumulative();
        double[] l = estimates.Ambient(finding).Cumulative();
        int x = Enumerable.Range(0, q.Length).MaxBy(v => q[v] - l[v]);
        return q[x] > l[x] && new Estimate(q[x], seen.Weight).Interval(0.95).Lower > l[x] ? new(fault, finding, q[x], l[x]) : null;
    }
}
