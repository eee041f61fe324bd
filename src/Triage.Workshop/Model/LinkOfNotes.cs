using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Reasoning.Networks;

namespace Triage.Workshop.Model;

/// <summary>What a fault note says of one finding, as a distribution over the finding's values.</summary>
/// <param name="Produces">P(value | only this cause), one per value, summing to 1.</param>
/// <param name="Weight">Pseudo-jobs behind it.</param>
/// <param name="When">Conditions under which it shows.</param>
/// <param name="EveryMinutes">Mean minutes between appearances; null when it is there all the time.</param>
internal sealed record LinkOfNotes(ImmutableArray<double> Produces, double Weight, Conditions When, double? EveryMinutes)
{
    /// <summary>
    /// Several lines on one finding are its several values; what they leave over is the normal value,
    /// or for a nominal finding spread as without the fault.
    /// </summary>
    public static LinkOfNotes? Of(Fault fault, Triage.Notes.Kinds.Finding finding, ImmutableArray<double> ambient, Func<string, string> today)
    {
        var lines = fault.Shows.Where(s => today(s.Finding) == finding.Id).ToList();
        if (lines.Count == 0)
            return null;
        var produces = new double[finding.Values.Length];
        foreach (var line in lines)
        {
            var value = line.Value is null ? finding.Values.Length - 1 : finding.IndexOf(line.Value);
            if (value >= 0)
                produces[value] += line.Chance.Probability;
        }

        var total = produces.Sum();
        if (total > 1)
            produces = [.. produces.Select(p => p / total)];
        else if (finding.Nominal)
            produces = [.. produces.Select((p, v) => p + (1 - total) * ambient[v])];
        else
            produces[0] += 1 - total;
        return new([.. produces], lines.Max(l => l.Chance.Weight), ConditionWords.Read(lines.SelectMany(l => l.When)), lines.Select(l => l.EveryMinutes).FirstOrDefault(e => e is not null));
    }
}
