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
    private readonly NetworkDraft _draft;

    private EvidenceCompiler(Network network, Evidence evidence, ImmutableHashSet<EvidenceItem> without) =>
        (_network, _evidence, _without, _draft) = (network, evidence, without, new(network, evidence.Actions));

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

        var logAllGood = compiler._draft.LogAllGood();
        if (network.SomethingIsWrong && !compiler.Without(EvidenceKind.SomethingIsWrong, 0))
        {
            compiler._draft.Need(course => course.State != 0);
        }

        return compiler._draft.Finish(logAllGood);
    }

    private bool Without(EvidenceKind kind, int index) => _without.Contains(new(kind, index));

    private IEnumerable<T> Kept<T>(ImmutableArray<T> items, EvidenceKind kind) =>
        _without.IsEmpty ? items : items.Where((_, i) => !Without(kind, i));

    /// <summary>One look has one value: the same finding, epoch, circumstances and watch cannot show two.</summary>
    private void Observe(Observation[] observations)
    {
        if (observations.GroupBy(o => o with { Value = 0, Doubt = 0 }).Any(look => look.DistinctBy(o => o.Value).Skip(1).Any()))
        {
            _draft.LogConstant = double.NegativeInfinity;
            return;
        }

        foreach (var observation in observations)
        {
            var finding = _network.Findings[observation.Finding];
            if (finding.Nominal)
            {
                ObserveNominal(finding, [.. finding.Links.Where(link => Shown.TakesPart(link, observation))], observation);
            }
            else
            {
                ObserveOrdered(finding, observation);
            }
        }
    }

    private void ObserveOrdered(Finding finding, Observation seen)
    {
        var leak = Share.Of(Shown.Ambient(finding, seen), seen.Value);
        var bit = seen.Value > 0 ? _draft.AddBit(new Bit(leak.Q, leak.P, Certain: false)) : -1;
        _draft.LogConstant += Math.Log(leak.AtMost);
        foreach (var link in finding.Links)
        {
            if (!Shown.TakesPart(link, seen))
            {
                continue;
            }

            var share = Share.Of(Shown.Produces(link, seen, finding), seen.Value);
            var logAtMost = Math.Log(share.AtMost);
            foreach (var course in _draft.Courses[link.Root])
            {
                if (!IsActive(course, link, seen))
                {
                    continue;
                }

                course.LogWeight += logAtMost;
                if (bit >= 0 && share.P > 0)
                {
                    course.Explain(bit, share.Q, share.P);
                }
            }
        }
    }

    private void ObserveNominal(Finding finding, Link[] links, Observation seen)
    {
        var ambient = finding.Ambient[seen.Value];
        var own = Array.ConvertAll(links, link => Shown.Produces(link, seen, finding)[seen.Value]);
        switch (links.Select(link => link.Root).Distinct().Count())
        {
            case 0:
                _draft.LogConstant += Math.Log(ambient);
                break;
            case 1:
                foreach (var course in _draft.Courses[links[0].Root])
                {
                    var shown = own.Where((_, i) => IsActive(course, links[i], seen));
                    course.LogWeight += Math.Log(shown.DefaultIfEmpty(ambient).Average());
                }

                break;
            default:
                var nominal = _draft.AddNominal(new NominalFactor(ambient, Math.Max(ambient, own.Max())));
                for (var i = 0; i < links.Length; i++)
                {
                    foreach (var course in _draft.Courses[links[i].Root].Where(c => IsActive(c, links[i], seen)))
                    {
                        course.Pick(nominal, own[i]);
                    }
                }

                break;
        }
    }

    private static bool IsActive(CourseDraft course, Link link, Observation seen) =>
        link.State == course.Events.Shows[seen.Epoch];

    /// <summary>A measurement sees the part itself: a fault that is merely silent still measures as one.</summary>
    private void Measure(RootLikelihood reading)
    {
        foreach (var course in _draft.Courses[reading.Root])
        {
            course.LogWeight += Math.Log(reading.PerState[course.Events.There[reading.Epoch]]);
        }
    }

    private void SeeOutcome(int k)
    {
        var outcome = Without(EvidenceKind.Outcome, k) ? ActionOutcome.NotSeen : _evidence.Actions[k].Outcome;
        switch (outcome)
        {
            case ActionOutcome.Works:
                _draft.Exclude(course => course.ShowsAfter[k] != 0);
                break;
            case ActionOutcome.StillFaulty:
                _draft.Need(course => course.ShowsAfter[k] != 0);
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
            _draft.Exclude(course => course.Shows[k + 1] != 0);
        }
        else if (held is false)
        {
            _draft.Need(course => course.Shows[k + 1] != 0);
        }
    }
}
