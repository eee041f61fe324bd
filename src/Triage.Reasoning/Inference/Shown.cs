using System.Collections.Immutable;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Inference;

/// <summary>What a link shows in the circumstances of one observation.</summary>
internal static class Shown
{
    public static bool TakesPart(Link link, Observation seen) =>
        link.When == Conditions.None || seen.Under == Conditions.None || (link.When & seen.Under) != 0;

    /// <summary>
    /// P(value) that the link produces. Something that comes and goes shows at all within the time watched with chance
    /// 1 − exp(−watched / every) (a Poisson process); until it shows, an ordered finding is normal and a nominal one ambient.
    /// </summary>
    public static ImmutableArray<double> Produces(Link link, Observation seen, Finding finding)
    {
        var unseen = 1 - ((1 - NotYet(link, seen)) * (1 - Missed(seen, finding)));
        if (unseen == 0)
        {
            return link.Produces;
        }

        return [.. link.Produces.Select((p, x) => p * (1 - unseen) + unseen * Otherwise(x))];

        double Otherwise(int value) => finding.Nominal ? finding.Ambient[value] : value == 0 ? 1 : 0;
    }

    /// <summary>
    /// P(value) without any cause, as reported: a wrong report of an abnormal value is one more cause that produces it, so that
    /// L'(k) = (1 − doubt) L(k) below the value reported (noisy-MAX).
    /// </summary>
    public static ImmutableArray<double> Ambient(Finding finding, Observation seen)
    {
        if (seen.Doubt == 0 || finding.Nominal || seen.Value == 0)
        {
            return finding.Ambient;
        }

        var below = finding.Ambient.Take(seen.Value).Sum();
        return [.. finding.Ambient.Select((p, x) => x < seen.Value ? p * (1 - seen.Doubt) : x == seen.Value ? p + (seen.Doubt * below) : p)];
    }

    private static double NotYet(Link link, Observation seen) =>
        link.EveryMinutes is { } every && seen.WatchedMinutes is { } watched ? Math.Exp(-watched / every) : 0;

    private static double Missed(Observation seen, Finding finding) => finding.Nominal || seen.Value == 0 ? seen.Doubt : 0;
}
