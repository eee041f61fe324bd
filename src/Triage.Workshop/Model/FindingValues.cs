using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Workshop.Model;

internal static class FindingValues
{
    /// <summary>How often an abnormal value is met without any listed fault when the note does not say (common practice, no source).</summary>
    private const double AnywayUnsaid = 0.03;

    /// <summary>Pseudo-jobs behind a number that no note gives.</summary>
    private const double WeightUnsaid = 2;

    public static int IndexOf(this Finding finding, string value)
    {
        for (var i = 0; i < finding.Values.Length; i++)
        {
            if (finding.Values[i].Id == value)
                return i;
        }

        return -1;
    }

    /// <summary>P(value without any linked cause), summing to 1, and the pseudo-jobs behind it.</summary>
    public static (ImmutableArray<double> Ambient, double Weight) Ambient(this Finding finding)
    {
        var weight = finding.Values.Select(v => v.Anyway?.Weight).Max() ?? WeightUnsaid;
        if (finding.Nominal)
        {
            var said = finding.Values.Select(v => v.Anyway?.Probability ?? 1.0 / finding.Values.Length).ToArray();
            return ([.. said.Select(p => p / said.Sum())], weight);
        }

        var abnormal = finding.Values.Skip(1).Select(v => v.Anyway?.Probability ?? AnywayUnsaid / (finding.Values.Length - 1)).ToArray();
        var sum = abnormal.Sum();
        if (sum > 1)
            abnormal = [.. abnormal.Select(p => p / sum)];
        return ([Math.Max(0, 1 - sum), .. abnormal], weight);
    }
}
