using System.Collections.Immutable;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Tests.Inference;

/// <summary>A small random network with evidence, from a seed: extremes (0, 1, 1e-9) are common on purpose.</summary>
public sealed class RandomCase(int seed)
{
    private readonly Random _random = new(seed);

    public static (Network Network, Evidence Evidence) Of(int seed, bool nominal = true, bool actions = true) =>
        new RandomCase(seed).Make(nominal, actions);

    /// <summary>One root ties parts together of which earlier ones damage later ones; what they show combines by noisy-MAX.</summary>
    public static (Network Network, Evidence Evidence) Compound(int seed) => new RandomCase(seed).MakeCompound();

    private (Network, Evidence) Make(bool nominal, bool actions)
    {
        ImmutableArray<Root> roots = [.. Enumerable.Range(0, _random.Next(1, 5)).Select(MakeRoot)];
        return Make(roots, [.. Enumerable.Range(0, _random.Next(1, 6)).Select(f => MakeFinding(f, roots, nominal))], actions);
    }

    private (Network, Evidence) MakeCompound()
    {
        var parts = ImmutableArray<CompoundPart>.Empty;
        var tiedParts = _random.Next(2, 4);
        for (var p = 0; p < tiedParts; p++)
        {
            parts = parts.Add(MakePart(p, parts));
        }

        var tied = CompoundRoot.Compile("tied", parts);
        Root[] alone = [.. Enumerable.Range(0, _random.Next(1, 3)).Select(MakeRoot)];
        ImmutableArray<Root> roots = [tied.Root, .. alone];
        return Make(roots, [.. Enumerable.Range(0, _random.Next(1, 5)).Select(f => Tie(MakeFinding(f, [new("none", [new("good", [])], [1]), .. alone], nominal: false)))], actions: true);

        Finding Tie(Finding finding) => finding with
        {
            Links =
            [
                .. finding.Links,
                .. parts.SelectMany((part, p) => Enumerable.Range(1, part.States.Length - 1)
                    .Where(_ => _random.Next(10) < 6)
                    .SelectMany(s => tied.Links(new Link(p, s, Distribution(finding.Values.Length)), 0))),
            ],
        };
    }

    private CompoundPart MakePart(int index, ImmutableArray<CompoundPart> earlier)
    {
        var plain = MakeRoot(index);
        return new($"p{index}", [.. plain.States.Take(3).Select(s => s with { Faults = [.. s.Faults.Select(f => $"tied {f}")] })], [1 - plain.Prior.Skip(1).Take(2).Sum(), .. plain.Prior.Skip(1).Take(2)])
        {
            Follows = [.. earlier.SelectMany((part, p) => Enumerable.Range(1, part.States.Length - 1).Select(s => new LeadsTo(p, s, 1, _random.Next(4) switch { 0 => 1, 1 => 0, _ => _random.NextDouble() })))],
        };
    }

    private (Network, Evidence) Make(ImmutableArray<Root> roots, ImmutableArray<Finding> findings, bool actions)
    {
        var network = new Network(roots, findings) { SomethingIsWrong = _random.Next(3) > 0 };
        ImmutableArray<ActionTaken> taken = actions ? [.. Enumerable.Range(0, _random.Next(0, 4)).Select(_ => MakeAction(roots))] : [];
        return (network, new Evidence
        {
            Actions = taken,
            Observations = [.. Enumerable.Range(0, _random.Next(0, 7)).Select(_ => MakeObservation(findings, taken.Length))],
            Likelihoods = [.. Enumerable.Range(0, _random.Next(0, 2)).Select(_ => MakeLikelihood(roots, taken.Length))],
        });
    }

    private Root MakeRoot(int index)
    {
        var states = _random.Next(2, 5);
        var faulty = Enumerable.Range(1, states - 1).Select(_ => _random.Next(4) == 0 ? 1e-9 : _random.NextDouble() * 0.3).ToArray();
        return new Root(
            $"r{index}",
            [.. Enumerable.Range(0, states).Select(s => new RootState(s == 0 ? "good" : $"m{s}", s == 0 ? [] : [$"r{index}/m{s}"]))],
            [1 - faulty.Sum(), .. faulty]);
    }

    private Finding MakeFinding(int index, ImmutableArray<Root> roots, bool nominal)
    {
        var values = _random.Next(2, 7);
        var links = roots.SelectMany((root, r) => Enumerable.Range(1, root.States.Length - 1).Select(s => (r, s)))
            .Where(_ => _random.Next(10) < 6)
            .Select(at => new Link(at.r, at.s, Distribution(values))
            {
                When = _random.Next(3) == 0 ? (Conditions)(1 << _random.Next(3)) : Conditions.None,
                EveryMinutes = _random.Next(4) == 0 ? _random.Next(1, 20) : null,
            });
        return new Finding($"f{index}", [.. Enumerable.Range(0, values).Select(v => $"v{v}")], Distribution(values), [.. links])
        {
            Nominal = nominal && _random.Next(3) == 0,
        };
    }

    private ImmutableArray<double> Distribution(int values)
    {
        switch (_random.Next(6))
        {
            case 0:
                var sure = _random.Next(values);
                return [.. Enumerable.Range(0, values).Select(v => v == sure ? 1.0 : 0)];
            case 1:
                return [1, .. new double[values - 1]];
            default:
                var raw = Enumerable.Range(0, values).Select(_ => _random.Next(4) == 0 ? 0 : _random.NextDouble()).ToArray();
                raw[0] += 0.05;
                return [.. raw.Select(x => x / raw.Sum())];
        }
    }

    private ActionTaken MakeAction(ImmutableArray<Root> roots)
    {
        var id = $"a{_random.Next(2)}";
        var choice = new Random(seed ^ id[1]);
        var clears = roots.SelectMany((root, r) => Enumerable.Range(1, root.States.Length - 1).Select(s => (r, s)))
            .Where(_ => choice.Next(2) == 0)
            .Select(at => new Clearing(at.r, at.s, Chance(choice), Chance(choice)));
        var outcome = (ActionOutcome)_random.Next(3);
        return new ActionTaken(id, [.. clears], outcome)
        {
            Held = outcome == ActionOutcome.Works && _random.Next(2) == 0 ? _random.Next(2) == 0 : null,
        };

        static double Chance(Random choice) => choice.Next(4) switch { 0 => 0, 1 => 1, _ => choice.NextDouble() };
    }

    private Observation MakeObservation(ImmutableArray<Finding> findings, int actions)
    {
        var finding = _random.Next(findings.Length);
        return new Observation(finding, _random.Next(findings[finding].Values.Length), _random.Next(actions + 1))
        {
            Under = _random.Next(3) == 0 ? (Conditions)_random.Next(8) : Conditions.None,
            Doubt = _random.Next(3) == 0 ? _random.NextDouble() * 0.9 : 0,
            WatchedMinutes = _random.Next(3) == 0 ? _random.Next(30) : null,
        };
    }

    private RootLikelihood MakeLikelihood(ImmutableArray<Root> roots, int actions)
    {
        var root = _random.Next(roots.Length);
        return new RootLikelihood(
            root, [.. roots[root].States.Select(_ => _random.Next(3) == 0 ? 0 : _random.NextDouble() * 2)], _random.Next(actions + 1));
    }
}
