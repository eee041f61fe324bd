using System.Collections.Immutable;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Inference;

/// <summary>
/// ∂ log w / ∂ logit θ of one hypothesis. A distribution over ordered values is a chain of Betas, worst value first
/// (a Dirichlet's stick-breaking): t(y) = P(y | at most y) with counts n·p(y) and n·C(y − 1).
/// </summary>
internal sealed class HypothesisScore(Network network, Evidence evidence)
{
    private readonly ILookup<(int, int), (int Observation, Link Link)> _links = evidence.Observations.Distinct()
        .SelectMany((seen, i) => network.Findings[seen.Finding].Links.Where(l => Shown.TakesPart(l, seen)).Select(l => (i, l)))
        .ToLookup(x => (x.l.Root, x.l.State));

    private readonly Observation[] _observations = [.. evidence.Observations.Distinct()];

    public Scores Of(IReadOnlyList<(int Root, CourseOfEvents Events)> faults)
    {
        var scores = new Scores();
        foreach (var (r, events) in faults.Where(f => f.Events.State > 0))
        {
            var root = network.Roots[r];
            if (!root.PriorWeight.IsDefaultOrEmpty)
            {
                var (p, n) = (root.Prior[events.State], root.PriorWeight[events.State]);
                scores.Add(new PriorParameter(r, events.State), 1, p * n, (1 - p) * n);
            }
        }

        var shown = faults
            .SelectMany(f => f.Events.Shows.Distinct().SelectMany(s => _links[(f.Root, s)].Where(l => f.Events.Shows[_observations[l.Observation].Epoch] == s)))
            .ToLookup(l => l.Observation, l => l.Link);
        for (var i = 0; i < _observations.Length; i++)
        {
            if (network.Findings[_observations[i].Finding].Nominal)
            {
                AddNominal(scores, _observations[i], [.. shown[i]]);
            }
            else
            {
                AddOrdered(scores, _observations[i], [.. shown[i]]);
            }
        }

        return scores;
    }

    private void AddOrdered(Scores scores, Observation seen, Link[] links)
    {
        var finding = network.Findings[seen.Finding];
        var causes = links.Select(l => (At: At(l), Produces: Shown.Produces(l, seen, finding), l.Weight)).ToArray();
        foreach (var (at, produces, weight) in causes)
        {
            for (var y = seen.Value + 1; y < produces.Length; y++)
            {
                Add(at, produces, weight, y, -Share.Of(produces, y).P);
            }
        }

        if (seen.Value == 0)
        {
            return;
        }

        var all = causes.Append((At: value => new AmbientParameter(seen.Finding, value), Produces: Shown.Ambient(finding, seen), Weight: finding.AmbientWeight)).ToArray();
        var unexplained = all.Aggregate(1.0, (q, cause) => q * Share.Of(cause.Produces, seen.Value).Q);
        foreach (var (at, produces, weight) in all.Where(_ => unexplained < 1))
        {
            Add(at, produces, weight, seen.Value, Share.Of(produces, seen.Value).P * unexplained / (1 - unexplained));
        }

        Func<int, Parameter> At(Link link) => value => new LinkParameter(seen.Finding, link.Root, link.Produces, value);

        void Add(Func<int, Parameter> at, ImmutableArray<double> produces, double weight, int value, double score) =>
            scores.Add(at(value), score, weight * produces[value], weight * produces.Take(value).Sum());
    }

    private void AddNominal(Scores scores, Observation seen, Link[] links)
    {
        var finding = network.Findings[seen.Finding];
        var own = links.Select(l => Shown.Produces(l, seen, finding)[seen.Value]).ToArray();
        if (links.Length == 0)
        {
            var p = finding.Ambient[seen.Value];
            scores.Add(new AmbientParameter(seen.Finding, seen.Value), 1 - p, p * finding.AmbientWeight, (1 - p) * finding.AmbientWeight);
        }

        for (var i = 0; i < links.Length && own.Sum() > 0; i++)
        {
            scores.Add(
                new LinkParameter(seen.Finding, links[i].Root, links[i].Produces, seen.Value), own[i] * (1 - own[i]) / own.Sum(), own[i] * links[i].Weight, (1 - own[i]) * links[i].Weight);
        }
    }
}
