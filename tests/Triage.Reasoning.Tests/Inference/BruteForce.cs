using Triage.Reasoning.Inference;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Tests.Inference;

/// <summary>
/// The posterior by summing over every state of every root and every fate of every fault under every action, straight from the
/// definitions and with signed differences. Shares nothing with the product but its records.
/// </summary>
public sealed class BruteForce
{
    private readonly Network _network;
    private readonly Evidence _evidence;
    private readonly Func<EvidenceKind, int, bool> _counts;
    private readonly int[] _states;

    private BruteForce(Network network, Evidence evidence, Func<EvidenceKind, int, bool> counts)
    {
        _network = network;
        _evidence = evidence;
        _counts = counts;
        _states = new int[network.Roots.Length];
        AtStart = [.. network.Roots.Select(r => new double[r.States.Length])];
        Now = [.. network.Roots.Select(r => new double[r.States.Length])];
    }

    /// <summary>P(evidence).</summary>
    public double Evidence { get; private set; }

    /// <summary>P(evidence, and what it is conditioned on).</summary>
    public double Joint { get; private set; }

    public double SomethingIsWrong { get; private set; }

    public double[][] AtStart { get; }

    public double[][] Now { get; }

    /// <summary>P(set of remaining faults, evidence), keyed "root:state …".</summary>
    public Dictionary<string, double> Hypotheses { get; } = [];

    public static BruteForce Of(Network network, Evidence evidence, Func<EvidenceKind, int, bool>? counts = null)
    {
        var sum = new BruteForce(network, evidence, counts ?? ((_, _) => true));
        sum.ChooseStates(0, 1);
        return sum;
    }

    private void ChooseStates(int root, double weight)
    {
        if (root < _states.Length)
        {
            for (_states[root] = 0; _states[root] < _network.Roots[root].States.Length; _states[root]++)
            {
                ChooseStates(root + 1, weight * _network.Roots[root].Prior[_states[root]]);
            }

            return;
        }

        if (_states.Any(s => s > 0))
        {
            SomethingIsWrong += weight;
        }

        var start = _states.Select(s => s > 0 ? Condition.Shows : Condition.Good).ToArray();
        Live(0, start, [], weight * Seen(0, start));
    }

    private void Live(int action, Condition[] now, Dictionary<(string, int), int> fates, double weight)
    {
        if (action == _evidence.Actions.Length)
        {
            Record(now, weight);
            return;
        }

        var done = _evidence.Actions[action];
        var first = _evidence.Actions.First(a => a.Id == done.Id);
        Act(0, now);

        void Act(int root, Condition[] after)
        {
            if (root == now.Length)
            {
                Look(after, fates, weight);
                return;
            }

            var named = first.Clears.FirstOrDefault(c => c.Root == root && c.State == _states[root]);
            if (named is null || now[root] is Condition.Good or Condition.Gone)
            {
                Act(root + 1, after);
            }
            else if (fates.TryGetValue((done.Id, root), out var known))
            {
                Act(root + 1, Apply(known));
            }
            else
            {
                double[] chances = [1 - named.Works, named.Works * (1 - named.Holds), named.Works * named.Holds];
                var before = weight;
                for (var fate = 0; fate < 3; fate++)
                {
                    fates[(done.Id, root)] = fate;
                    weight = before * chances[fate];
                    Act(root + 1, Apply(fate));
                }

                weight = before;
                fates.Remove((done.Id, root));
            }

            Condition[] Apply(int fate)
            {
                Condition[] changed = [.. after];
                changed[root] = fate switch { 0 => now[root], 1 => Condition.Silent, _ => Condition.Gone };
                return changed;
            }
        }

        void Look(Condition[] after, Dictionary<(string, int), int> drawn, double so)
        {
            var shows = after.Contains(Condition.Shows);
            if (_counts(EvidenceKind.Outcome, action)
                && (done.Outcome == ActionOutcome.Works && shows || done.Outcome == ActionOutcome.StillFaulty && !shows))
            {
                return;
            }

            Condition[] epoch = [.. after];
            if (done.Held is { } held)
            {
                epoch = [.. after.Select(c => c == Condition.Silent ? Condition.Shows : c)];
                if (_counts(EvidenceKind.Held, action) && held == epoch.Contains(Condition.Shows))
                {
                    return;
                }
            }

            Live(action + 1, epoch, new(drawn), so * Seen(action + 1, epoch));
        }
    }

    private void Record(Condition[] now, double weight)
    {
        Evidence += weight;
        if (_network.SomethingIsWrong && _counts(EvidenceKind.SomethingIsWrong, 0) && _states.All(s => s == 0))
        {
            return;
        }

        Joint += weight;
        var remaining = Enumerable.Range(0, now.Length).Where(r => now[r] is Condition.Shows or Condition.Silent).ToArray();
        for (var r = 0; r < now.Length; r++)
        {
            AtStart[r][_states[r]] += weight;
            Now[r][remaining.Contains(r) ? _states[r] : 0] += weight;
        }

        var key = string.Join(' ', remaining.Select(r => $"{r}:{_states[r]}"));
        Hypotheses[key] = Hypotheses.GetValueOrDefault(key) + weight;
    }

    private double Seen(int epoch, Condition[] now)
    {
        var chance = 1.0;
        var looks = _evidence.Observations
            .Where((o, i) => o.Epoch == epoch && _counts(EvidenceKind.Observation, i)).Distinct().ToArray();
        foreach (var look in looks)
        {
            chance *= Chance(look, now);
            if (looks.Any(other => other.Value != look.Value && other with { Value = look.Value, Doubt = look.Doubt } == look))
            {
                return 0;
            }
        }

        for (var i = 0; i < _evidence.Likelihoods.Length; i++)
        {
            var reading = _evidence.Likelihoods[i];
            if (reading.Epoch == epoch && _counts(EvidenceKind.Likelihood, i))
            {
                chance *= reading.PerState[now[reading.Root] is Condition.Good or Condition.Gone ? 0 : _states[reading.Root]];
            }
        }

        return chance;
    }

    private double Chance(Observation look, Condition[] now)
    {
        var finding = _network.Findings[look.Finding];
        var causes = finding.Links
            .Where(l => _states[l.Root] == l.State && now[l.Root] == Condition.Shows)
            .Where(l => l.When == Conditions.None || look.Under == Conditions.None || (l.When & look.Under) != 0)
            .Select(l => Produced(l, look, finding))
            .ToArray();
        return finding.Nominal
            ? causes.Length == 0 ? finding.Ambient[look.Value] : causes.Average(c => c[look.Value])
            : AtMost(look.Value) - (look.Value == 0 ? 0 : (1 - look.Doubt) * AtMost(look.Value - 1));

        double AtMost(int value) =>
            causes.Aggregate(finding.Ambient.Take(value + 1).Sum(), (product, c) => product * c.Take(value + 1).Sum());
    }

    private static double[] Produced(Link link, Observation look, Finding finding)
    {
        var shows = link.EveryMinutes is null || look.WatchedMinutes is null ? 1 : 1 - Math.Exp(-look.WatchedMinutes.Value / link.EveryMinutes.Value);
        if (finding.Nominal || look.Value == 0)
        {
            // one who does not look well misses each cause by itself
            shows *= 1 - look.Doubt;
        }

        double[] otherwise = finding.Nominal ? [.. finding.Ambient] : [1, .. new double[finding.Values.Length - 1]];
        return [.. link.Produces.Zip(otherwise, (p, o) => shows * p + (1 - shows) * o)];
    }

    private enum Condition
    {
        Good,
        Shows,
        Silent,
        Gone,
    }
}
