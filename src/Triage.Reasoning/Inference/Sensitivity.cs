using System.Collections.Immutable;
using MathNet.Numerics.Distributions;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Inference;

/// <summary>How firmly the first place stands.</summary>
public static class Sensitivity
{
    private const int Leaves = 400, Work = 5_000, Verified = 12, Rivals = 4, Rounds = 40;
    private const double Bound = 1e-3, Certain = 1e-12;

    /// <summary>Share of the way that the first-order estimate must reach for a number to be tried on the full model.</summary>
    private const double Promising = 0.5;

    /// <summary>
    /// Which single prior, link or ambient chance, moved within its interval, makes another fault likelier than the likeliest one; the least moved
    /// first. Preselected by scores over the likeliest hypotheses, ∂ log odds / ∂ logit θ; then decided on the full model:
    /// P(fault, evidence) is linear in any one θ whose finding was looked at once (Castillo, Gutiérrez &amp; Hadi 1997, "Sensitivity analysis in
    /// discrete Bayesian networks"), so that the end of the interval and what is known already give where two faults change places.
    /// </summary>
    /// <param name="network">The network, with weights where its numbers are not exactly known.</param>
    /// <param name="evidence">What was seen and done.</param>
    /// <param name="level">Of the intervals, 0 … 1.</param>
    /// <param name="now">Of the faults still there after all actions; else of those there at the start.</param>
    /// <returns>Empty when no single number tried (the dozen most promising) changes the first place.</returns>
    /// <exception cref="ArgumentException">The input makes no sense, or the evidence contradicts itself.</exception>
    public static ImmutableArray<Swing> Of(Network network, Evidence evidence, double level = 0.9, bool now = false)
    {
        if (level is not (> 0 and < 1))
        {
            throw new ArgumentException($"An interval needs a level between 0 and 1, not {level}.");
        }

        Func<Network, Dictionary<string, double>?> under = moved => JointMasses.Of(moved, evidence, now);
        if (under(network) is not { Count: > 1 } masses)
        {
            return [];
        }

        var ranked = masses.OrderByDescending(f => f.Value).ThenBy(f => f.Key, StringComparer.Ordinal).ToArray();
        var z = Normal.InvCDF(0, 1, (1 + level) / 2);
        var scores = new FaultScores(network, evidence, now, Leaves, Work, Bound);
        return
        [
            .. ranked.Skip(1).Take(Rivals).Where(rival => rival.Value > 0)
                .SelectMany(rival => scores.Towards(rival.Key, ranked[0].Key)
                    .Select(p => (p.Parameter, p.Deviation, Up: p.Slope > 0, Reach: z * p.Deviation * Math.Abs(p.Slope) / Math.Log(ranked[0].Value / rival.Value))))
                .Where(p => !(p.Reach < Promising))
                .GroupBy(p => (p.Parameter, p.Up))
                .Select(same => same.MaxBy(p => p.Reach))
                .OrderByDescending(p => p.Reach)
                .Take(Verified)
                .Select(p => Try(network, under, p.Parameter, p.Up, z * p.Deviation, masses, ranked[0].Key))
                .OfType<Swing>()
                .OrderBy(s => Math.Abs(Logit(s.At) - Logit(s.Chance))),
        ];
    }

    private static Swing? Try(
        Network network, Func<Network, Dictionary<string, double>?> under, Parameter parameter, bool up, double reach, Dictionary<string, double> now, string first)
    {
        var theta = parameter.Theta(network);
        if (theta is not (> Certain and < 1 - Certain))
        {
            // on the logit, what is certain does not move
            return null;
        }

        var (lower, upper) = (Logistic(Logit(theta) - reach), Logistic(Logit(theta) + reach));
        var end = up ? upper : lower;
        if (under(parameter.Moved(network, end)) is not { Count: > 1 } there)
        {
            return null;
        }

        var crossing = now.Keys.Where(f => f != first && there[f] > there[first])
            .Select(f => (Fault: f, Share: (now[first] - now[f]) / (now[first] - now[f] + there[f] - there[first])))
            .OrderBy(c => c.Share)
            .FirstOrDefault();
        return crossing.Fault is null ? null : Describe(parameter) with
        {
            Chance = theta,
            At = Crossing(network, under, parameter, (theta, now[first] - now[crossing.Fault]), (end, there[first] - there[crossing.Fault]), first, crossing.Fault),
            Interval = new(lower, upper),
            First = first,
            Instead = crossing.Fault,
        };

        Swing Describe(Parameter moved)
        {
            var (kind, root, state, finding, value) = moved switch
            {
                PriorParameter p => (SwingKind.Prior, p.Root, p.State, -1, 0),
                AmbientParameter a => (SwingKind.Ambient, -1, 0, a.Finding, a.Value),
                LinkParameter l => (SwingKind.Link, l.Root, network.Findings[l.Finding].Links.First(k => k.Root == l.Root && k.Produces == l.Produces).State, l.Finding, l.Value),
                _ => throw new ArgumentException($"{moved.GetType().Name} is not known here."),
            };
            return new(kind, root, state, finding, value) { Chance = theta, At = theta, Interval = default, First = first, Instead = first };
        }
    }

    /// <summary>
    /// Where two faults change places: the secant at once where the difference is linear; where a finding was looked at more than once it
    /// is not, and the secant goes on (the Illinois method: Dowell &amp; Jarratt 1971).
    /// </summary>
    private static double Crossing(
        Network network, Func<Network, Dictionary<string, double>?> under, Parameter parameter, (double Theta, double Lead) a, (double Theta, double Lead) b, string first, string instead)
    {
        var theta = a.Theta;
        for (var round = 0; round < Rounds; round++)
        {
            theta = a.Theta + a.Lead / (a.Lead - b.Lead) * (b.Theta - a.Theta);
            if (under(parameter.Moved(network, theta)) is not { } masses || Math.Abs(masses[first] - masses[instead]) <= 1e-9 * masses[first])
            {
                return theta;
            }

            var lead = masses[first] - masses[instead];
            a = lead * b.Lead < 0 ? b : (a.Theta, a.Lead / 2);
            b = (theta, lead);
        }

        return theta;
    }

    private static double Logit(double p) => Math.Log(p / (1 - p));

    private static double Logistic(double x) => 1 / (1 + Math.Exp(-x));
}
