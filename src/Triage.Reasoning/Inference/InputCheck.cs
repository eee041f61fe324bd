using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Inference;

/// <summary>Refuses networks and evidence that make no sense, saying what and where.</summary>
internal static class InputCheck
{
    private const double Slack = 1e-6;

    public static void Require(Network network, Evidence evidence)
    {
        foreach (var root in network.Roots)
        {
            Require(root);
        }

        foreach (var finding in network.Findings)
        {
            Require(finding, network);
        }

        for (var i = 0; i < evidence.Observations.Length; i++)
        {
            Require(evidence.Observations[i], $"Observation {i}", network, evidence);
        }

        for (var i = 0; i < evidence.Likelihoods.Length; i++)
        {
            Require(evidence.Likelihoods[i], $"Likelihood {i}", network, evidence);
        }

        foreach (var action in evidence.Actions)
        {
            Require(action, network);
        }
    }

    private static void Require(Root root)
    {
        var where = $"Root '{root.Id}'";
        Demand(root.States.Length > 0 && root.Prior.Length == root.States.Length, $"{where}: give one prior for each of its states, good first.");
        Demand(SumsToOne(root.Prior), $"{where}: priors must lie in 0 … 1 and sum to 1.");
        Demand(
            root.PriorWeight.IsDefaultOrEmpty || root.PriorWeight.Length == root.Prior.Length && !root.PriorWeight.Any(w => !(w > 0)),
            $"{where}: give one positive prior weight for each state, or none at all.");
    }

    private static void Require(Finding finding, Network network)
    {
        var where = $"Finding '{finding.Id}'";
        var values = finding.Values.Length;
        Demand(values >= 2, $"{where}: give at least two values.");
        Demand(IsDistribution(finding.Ambient, values), $"{where}: ambient needs one chance for each value, summing to 1.");
        Demand(finding.AmbientWeight > 0, $"{where}: the ambient weight must be positive.");
        foreach (var link in finding.Links)
        {
            RequireFault(link.Root, link.State, where, network);
            Demand(IsDistribution(link.Produces, values), $"{where}, root '{network.Roots[link.Root].Id}': give one chance for each value, summing to 1.");
            Demand(link.Weight > 0, $"{where}: a link's weight must be positive.");
            Demand(link.EveryMinutes is null or > 0, $"{where}: minutes between appearances must be positive.");
        }
    }

    private static void Require(Observation seen, string where, Network network, Evidence evidence)
    {
        Demand(seen.Finding >= 0 && seen.Finding < network.Findings.Length, $"{where}: there is no finding {seen.Finding}.");
        var finding = network.Findings[seen.Finding];
        Demand(seen.Value >= 0 && seen.Value < finding.Values.Length, $"{where}: finding '{finding.Id}' has no value {seen.Value}.");
        Demand(seen.Doubt is >= 0 and < 1, $"{where}: a doubt lies between 0 and less than 1.");
        Demand(seen.WatchedMinutes is null or >= 0, $"{where}: minutes watched cannot be negative.");
        RequireEpoch(seen.Epoch, where, evidence);
    }

    private static void Require(RootLikelihood reading, string where, Network network, Evidence evidence)
    {
        Demand(reading.Root >= 0 && reading.Root < network.Roots.Length, $"{where}: there is no root {reading.Root}.");
        Demand(
            reading.PerState.Length == network.Roots[reading.Root].States.Length && reading.PerState.All(p => p >= 0 && double.IsFinite(p)),
            $"{where}: give one non-negative number for each state of root '{network.Roots[reading.Root].Id}'.");
        RequireEpoch(reading.Epoch, where, evidence);
    }

    private static void Require(ActionTaken action, Network network)
    {
        var where = $"Action '{action.Id}'";
        Demand(
            action.Held is null || action.Outcome == ActionOutcome.Works,
            $"{where}: whether it held after power was lost can only be said after it worked.");
        var named = new HashSet<(int, int)>();
        foreach (var clearing in action.Clears)
        {
            RequireFault(clearing.Root, clearing.State, where, network);
            Demand(named.Add((clearing.Root, clearing.State)), $"{where}: it names state {clearing.State} of root {clearing.Root} twice.");
            Demand(
                clearing.Leaves >= 0 && clearing.Leaves != clearing.State && clearing.Leaves < network.Roots[clearing.Root].States.Length,
                $"{where}: state {clearing.State} of root {clearing.Root} is left in state {clearing.Leaves}, which must be 0 or another state of that root.");
            Demand(IsChance(clearing.Works) && IsChance(clearing.Holds), $"{where}: chances must lie in 0 … 1.");
        }
    }

    private static void RequireFault(int root, int state, string where, Network network)
    {
        Demand(root >= 0 && root < network.Roots.Length, $"{where}: there is no root {root}.");
        Demand(state > 0 && state < network.Roots[root].States.Length, $"{where}: root '{network.Roots[root].Id}' has no fault state {state}.");
    }

    private static void RequireEpoch(int epoch, string where, Evidence evidence) =>
        Demand(epoch >= 0 && epoch <= evidence.Actions.Length, $"{where}: epoch {epoch} needs that many actions, but there are {evidence.Actions.Length}.");

    private static bool IsDistribution(ImmutableArray<double> chances, int count) => chances.Length == count && SumsToOne(chances);

    private static bool SumsToOne(ImmutableArray<double> chances)
    {
        var sum = 0.0;
        foreach (var chance in chances)
        {
            sum += IsChance(chance) ? chance : double.NaN;
        }

        return Math.Abs(sum - 1) <= Slack;
    }

    private static bool IsChance(double chance) => chance is >= 0 and <= 1;

    /// <param name="holds">What must hold.</param>
    /// <param name="otherwise">Written out only where it does not: most of the time of a check would else go into its messages.</param>
    private static void Demand(bool holds, [InterpolatedStringHandlerArgument(nameof(holds))] ref Message otherwise)
    {
        if (!holds)
        {
            throw new ArgumentException(otherwise.ToString());
        }
    }

    [InterpolatedStringHandler]
    private ref struct Message
    {
        private readonly StringBuilder? _text;

        public Message(int literalLength, int formattedCount, bool holds, out bool written)
        {
            _text = holds ? null : new StringBuilder(literalLength + 16 * formattedCount);
            written = !holds;
        }

        public readonly void AppendLiteral(string text) => _text!.Append(text);

        public readonly void AppendFormatted<T>(T value) => _text!.Append(CultureInfo.InvariantCulture, $"{value}");

        public override readonly string ToString() => _text!.ToString();
    }
}
