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
        if (link.EveryMinutes is not { } every || seen.WatchedMinutes is not { } watched)
        {
            return link.Produces;
        }

        var unseen = Math.Exp(-watched / every);
        return [.. link.Produces.Select((p, x) => p * (1 - unseen) + unseen * Otherwise(x))];

        double Otherwise(int value) => finding.Nominal ? finding.Ambient[value] : value == 0 ? 1 : 0;
    }
}
