using System.Collections.Immutable;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Inference;

/// <summary>
/// Takes evidence into a network. An ordered value x of a noisy-MAX finding has
/// P(f = x) = L(x) Π C(x) − L(x−1) Π C(x−1) = L(x) Π C(x) · (1 − L(x−1)/L(x) · Π C(x−1)/C(x)) (Henrion 1989, Díez 1993):
/// a product, and for x above normal a bit that a cause explains with chance produces(x) / C(x). Nothing is subtracted.
/// </summary>
internal sealed class EvidenceCompiler
{
    private readonly Network _network;
    private readonly Evidence _evidence;
    private readonly ImmutableHashSet<EvidenceItem> _without;
    private readonly List<Draft>[] _drafts;
    private readonly List<Bit> _bits = [];
    private readonly List<NominalFactor> _nominals = [];
    private double _logConstant;

    private EvidenceCompiler(Network network, Evidence evidence, ImmutableHashSet<EvidenceItem> without)
    {
        _network = network;
        _evidence = evidence;
        _without = without;
        _drafts = [.. network.Roots.Select((root, r) => Drafts(root, r, evidence))];
    }

    public static CompiledNetwork Compile(Network network, Evidence evidence) => Compile(network, evidence, []);

    /// <summary>
    /// Takes in all but some pieces. What was done stays done: without its outcome an action still acts, and power that was
    /// lost stays lost; only what was seen of it is dropped.
    /// </summary>
    public static CompiledNetwork Compile(Network network, Evidence evidence, ImmutableHashSet<EvidenceItem> without)
    {
        var compiler = new EvidenceCompiler(network, evidence, without);
        compiler.Observe([.. compiler.Kept(evidence.Observations, EvidenceKind.Observation).Distinct()]);
        foreach (var likelihood in compiler.Kept(evidence.Likelihoods, EvidenceKind.Likelihood))
        {
            compiler.Measure(likelihood);
        }

        for (var k = 0; k < evidence.Actions.Length; k++)
        {
            compiler.SeeOutcome(k);
            compiler.SeeHeld(k);
        }

        if (compiler.SomethingIsWrong)
        {
            compiler.Need(course => course.State != 0);
        }

        return compiler.Finish();
    }

    private bool SomethingIsWrong => _network.SomethingIsWrong && !Without(EvidenceKind.SomethingIsWrong, 0);

    private bool Without(EvidenceKind kind, int index) => _without.Contains(new(kind, index));

    private IEnumerable<T> Kept<T>(ImmutableArray<T> items, EvidenceKind kind) => items.Where((_, i) => !Without(kind, i));

    private static List<Draft> Drafts(Root root, int index, Evidence evidence) =>
    [
        .. root.Prior.SelectMany((prior, state) => CourseOfEvents.From(index, state, evidence.Actions)
            .Select(c => new Draft(c) { LogWeight = Math.Log(prior * c.Chance) })),
    ];

    /// <summary>One look has one value: the same finding, epoch, circumstances and watch cannot show two.</summary>
    private void Observe(Observation[] observations)
    {
        if (observations.GroupBy(o => o with { Value = 0 }).Any(look => look.Skip(1).Any()))
        {
            _logConstant = double.NegativeInfinity;
            return;
        }

        foreach (var observation in observations)
        {
            Observe(observation);
        }
    }

    private void Observe(Observation seen)
    {
        var finding = _network.Findings[seen.Finding];
        var links = finding.Links.Where(link => Shown.TakesPart(link, seen)).ToArray();
        if (finding.Nominal)
        {
            ObserveNominal(finding, links, seen);
        }
        else
        {
            ObserveOrdered(finding, links, seen);
        }
    }

    private void ObserveOrdered(Finding finding, Link[] links, Observation seen)
    {
        var leak = Share.Of(finding.Ambient, seen.Value);
        var bit = seen.Value > 0 ? AddBit(new Bit(leak.Q, leak.P, Certain: false)) : -1;
        _logConstant += Math.Log(leak.AtMost);
        foreach (var link in links)
        {
            var share = Share.Of(Shown.Produces(link, seen, finding), seen.Value);
            foreach (var draft in ActiveIn(seen.Epoch, link))
            {
                draft.LogWeight += Math.Log(share.AtMost);
                if (bit >= 0 && share.P > 0)
                {
                    draft.Explain(bit, share.Q, share.P);
                }
            }
        }
    }

    private void ObserveNominal(Finding finding, Link[] links, Observation seen)
    {
        var ambient = finding.Ambient[seen.Value];
        var own = links.Select(link => Shown.Produces(link, seen, finding)[seen.Value]).ToArray();
        switch (links.Select(link => link.Root).Distinct().Count())
        {
            case 0:
                _logConstant += Math.Log(ambient);
                break;
            case 1:
                foreach (var draft in _drafts[links[0].Root])
                {
                    var shown = own.Where((_, i) => draft.Events.Active[seen.Epoch] && links[i].State == draft.Events.State);
                    draft.LogWeight += Math.Log(shown.DefaultIfEmpty(ambient).Average());
                }

                break;
            default:
                _nominals.Add(new NominalFactor(ambient, Math.Max(ambient, own.Max())));
                for (var i = 0; i < links.Length; i++)
                {
                    foreach (var draft in ActiveIn(seen.Epoch, links[i]))
                    {
                        draft.Picks.Add(new Pick(_nominals.Count - 1, own[i]));
                    }
                }

                break;
        }
    }

    /// <summary>A measurement sees the part itself: a fault that is merely silent still measures as one.</summary>
    private void Measure(RootLikelihood reading)
    {
        foreach (var draft in _drafts[reading.Root])
        {
            draft.LogWeight += Math.Log(reading.PerState[draft.Events.Present[reading.Epoch] ? draft.Events.State : 0]);
        }
    }

    private void SeeOutcome(int k)
    {
        if (Without(EvidenceKind.Outcome, k))
        {
            return;
        }

        switch (_evidence.Actions[k].Outcome)
        {
            case ActionOutcome.Works:
                Exclude(course => course.ActiveAfter[k]);
                break;
            case ActionOutcome.StillFaulty:
                Need(course => course.ActiveAfter[k]);
                break;
            case ActionOutcome.NotSeen:
                break;
        }
    }

    private void SeeHeld(int k)
    {
        var held = Without(EvidenceKind.Held, k) ? null : _evidence.Actions[k].Held;
        if (held is true)
        {
            Exclude(course => course.Active[k + 1]);
        }
        else if (held is false)
        {
            Need(course => course.Active[k + 1]);
        }
    }

    private void Exclude(Func<CourseOfEvents, bool> seen)
    {
        foreach (var draft in _drafts.SelectMany(d => d).Where(d => seen(d.Events)))
        {
            draft.LogWeight = double.NegativeInfinity;
        }
    }

    private void Need(Func<CourseOfEvents, bool> explains)
    {
        var bit = AddBit(new Bit(1, 0, Certain: true));
        foreach (var draft in _drafts.SelectMany(d => d).Where(d => explains(d.Events)))
        {
            draft.Explain(bit, 0, 1);
        }
    }

    private int AddBit(Bit bit)
    {
        _bits.Add(bit);
        return _bits.Count - 1;
    }

    private IEnumerable<Draft> ActiveIn(int epoch, Link link) =>
        _drafts[link.Root].Where(d => d.Events.State == link.State && d.Events.Active[epoch]);

    private CompiledNetwork Finish()
    {
        var logAllGood = _logConstant + _drafts.Sum(d => d[0].LogWeight) + _nominals.Sum(n => Math.Log(n.Ambient))
            + _bits.SkipLast(SomethingIsWrong ? 1 : 0).Sum(b => Math.Log(b.LeakP));
        var roots = _drafts.Select(Normalise).ToArray();
        return ImpliedBits.Drop(new CompiledNetwork
        {
            Roots = roots,
            Bits = [.. _bits],
            Nominals = [.. _nominals],
            LogConstant = _logConstant,
            LogAllGood = double.IsNaN(logAllGood) ? double.NegativeInfinity : logAllGood,
        });
    }

    private CompiledRoot Normalise(List<Draft> drafts)
    {
        var top = drafts.Max(d => d.LogWeight);
        if (double.IsNegativeInfinity(top))
        {
            _logConstant = top;
            return new([.. drafts.Select(d => d.Finish(top))]);
        }

        var logSum = top + Math.Log(drafts.Sum(d => Math.Exp(d.LogWeight - top)));
        _logConstant += logSum;
        return new([.. drafts.Where(d => d.LogWeight > double.NegativeInfinity || d.Events.State == 0)
            .Select(d => d.Finish(d.LogWeight - logSum))]);
    }

    private sealed class Draft(CourseOfEvents events)
    {
        public CourseOfEvents Events { get; } = events;

        public double LogWeight { get; set; }

        private List<Effect> Effects { get; } = [];

        public List<Pick> Picks { get; } = [];

        /// <summary>Two causes in one state explain a bit as noisy-OR.</summary>
        public void Explain(int bit, double q, double p)
        {
            if (Effects.Count > 0 && Effects[^1] is var last && last.Bit == bit)
            {
                Effects[^1] = new Effect(bit, last.Q * q, last.P + last.Q * p);
            }
            else
            {
                Effects.Add(new Effect(bit, q, p));
            }
        }

        public Course Finish(double logWeight) => new(Events, logWeight, [.. Effects], [.. Picks]);
    }
}
