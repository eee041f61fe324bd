using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Reasoning.Learning;
using Triage.Reasoning.Networks;
using Triage.Workshop.Knowledge;
using NoteFinding = Triage.Notes.Kinds.Finding;
using NetFinding = Triage.Reasoning.Networks.Finding;

namespace Triage.Workshop.Model;

/// <summary>The one place where notes and learned numbers become a network.</summary>
internal static class NetworkFromNotes
{
    /// <summary>
    /// The unlisted fault shows an abnormal finding as often as the listed ones of the machine do on average, within these bounds, and stands
    /// on this many pseudo-jobs (common practice, no source): it leads only when no listed fault explains well.
    /// </summary>
    private const double UnlistedShowsLeast = 0.15, UnlistedShowsMost = 0.3, UnlistedWeight = 4;

    /// <param name="alsoSeen">Findings recorded on the job that the device's own notes do not link to anything.</param>
    public static DeviceNetwork Build(DeviceScope scope, Learned learned, Notebook notes, IEnumerable<string> alsoSeen)
    {
        var roots = RootsFromNotes.Build(scope, scope.Class.Exact ? [] : Shares(scope, learned), learned.IndependentFaults);
        var places = Places(roots);
        var seen = scope.Findings.Concat(alsoSeen.Select(notes.Find<NoteFinding>).OfType<NoteFinding>())
            .DistinctBy(f => f.Id).Where(f => f.Values.Length > 1);
        ImmutableArray<NetFinding> findings =
        [
            .. seen.Select(f => FromFinding(f, scope, learned, notes, roots, places)),
            .. scope.Tests.Where(t => t.Revealed.IsEmpty).Select(t => FromMeasurement(t, scope, roots)).OfType<NetFinding>(),
        ];
        return new()
        {
            Scope = scope,
            Network = new([.. roots], findings) { SomethingIsWrong = !scope.Class.Exact },
            Findings = findings.Select((f, i) => KeyValuePair.Create(f.Id, i)).ToImmutableDictionary(StringComparer.Ordinal),
            Faults = places,
        };
    }

    /// <summary>Shares of all causes that can be met here, summing to 1, each with the jobs behind it.</summary>
    private static Dictionary<string, Estimate> Shares(DeviceScope scope, Learned learned)
    {
        var unlisted = learned.UnlistedShare(scope.Levels);
        var shares = learned.Shares(ScopesFromNotes.Of(scope), scope.Levels)
            .ToDictionary(s => s.Key, s => s.Value with { Mean = s.Value.Mean * (1 - unlisted.Mean) }, StringComparer.Ordinal);
        shares[SpecialFaults.Unlisted] = unlisted;
        return shares;
    }

    private static ImmutableDictionary<string, ImmutableArray<(int, int)>> Places(IReadOnlyList<Root> roots) =>
        roots.SelectMany((root, r) => root.States.SelectMany((state, s) => state.Faults.Select(f => (Fault: f, Place: (r, s)))))
            .GroupBy(p => p.Fault, p => p.Place, StringComparer.Ordinal)
            .ToImmutableDictionary(g => g.Key, g => g.ToImmutableArray(), StringComparer.Ordinal);

    private static NetFinding FromFinding(
        NoteFinding finding, DeviceScope scope, Learned learned, Notebook notes,
        IReadOnlyList<Root> roots, ImmutableDictionary<string, ImmutableArray<(int Root, int State)>> places)
    {
        var ambient = learned.Ambient(finding.Id);
        var links = scope.Faults
            .Select(f => (f.Id, Link: FromFault(f, finding, scope, learned, notes, ambient.Mean)))
            .Where(l => l.Link is not null)
            .ToDictionary(l => l.Id, l => l.Link!, StringComparer.Ordinal);
        links[SpecialFaults.Unlisted] = new(Modest(finding, ambient.Mean, OnAverage(links, roots, places)), UnlistedWeight, Conditions.None, null);
        var perState = links.Keys.Where(places.ContainsKey).SelectMany(f => places[f]).Distinct().Order()
            .Select(place => CombinedLink.Of(place, roots[place.Root].States[place.State].Faults, links, finding.Nominal));
        return new(finding.Id, [.. finding.Values.Select(v => v.Id)], ambient.Mean, [.. perState])
        {
            Nominal = finding.Nominal,
            AmbientWeight = ambient.Weight,
        };
    }

    private static LinkOfNotes? FromFault(Fault fault, NoteFinding finding, DeviceScope scope, Learned learned, Notebook notes, ImmutableArray<double> ambient)
    {
        var said = LinkOfNotes.Of(fault, finding, ambient, notes.Today);
        var known = learned.Link(fault.Id, finding.Id, scope.Levels);
        return known is null ? said : new(known.Mean, known.Weight, said?.When ?? Conditions.None, said?.EveryMinutes);
    }

    /// <summary>P(abnormal | one listed fault), averaged over the faults of the machine by their priors.</summary>
    private static double OnAverage(Dictionary<string, LinkOfNotes> links, IReadOnlyList<Root> roots, ImmutableDictionary<string, ImmutableArray<(int Root, int State)>> places)
    {
        var listed = places.Where(p => p.Key is not (SpecialFaults.Unlisted or SpecialFaults.NothingWrong))
            .Select(p => (p.Key, Prior: p.Value.Sum(at => roots[at.Root].Prior[at.State]))).ToList();
        var all = listed.Sum(f => f.Prior);
        return all <= 0 ? 0 : listed.Sum(f => f.Prior * (links.TryGetValue(f.Key, out var link) ? 1 - link.Produces[0] : 0)) / all;
    }

    private static ImmutableArray<double> Modest(NoteFinding finding, ImmutableArray<double> ambient, double onAverage)
    {
        var values = finding.Values.Length;
        var shows = Math.Clamp(onAverage, UnlistedShowsLeast, UnlistedShowsMost);
        return finding.Nominal
            ? [.. ambient.Select(p => (1 - shows) * p + shows / values)]
            : [1 - shows, .. Enumerable.Repeat(shows / (values - 1), values - 1)];
    }

    /// <summary>A measurement of one part, or a check on one fault, is a nominal finding linked to that part's root alone.</summary>
    private static NetFinding? FromMeasurement(Test test, DeviceScope scope, IReadOnlyList<Root> roots)
    {
        var modes = ModesTold(test, scope);
        var measured = roots.Select((root, r) => (Root: root, Index: r)).FirstOrDefault(p => p.Root.States.Any(s => s.Faults.Any(modes.ContainsKey)));
        if (measured.Root is null)
            return null;
        var links = measured.Root.States
            .Select((state, s) => (Mode: state.Faults.Where(modes.ContainsKey).Select(f => modes[f]).FirstOrDefault(), State: s))
            .Where(l => l.Mode is not null)
            .Select(l => new Link(measured.Index, l.State, Given(test, l.Mode!)) { Weight = Weight(test, l.Mode!) });
        return new(DeviceNetwork.Measurement(test.Id), [.. test.Outcomes.Select(o => o.Id)], Given(test, Sound(test)), [.. links])
        {
            Nominal = true,
            AmbientWeight = Weight(test, Sound(test)),
        };
    }

    /// <summary>By fault: under which name the test gives the chances of its outcomes.</summary>
    private static Dictionary<string, string> ModesTold(Test test, DeviceScope scope) =>
        test.Decides is { } decided
            ? scope.Faults.Where(f => f.Id == decided || (f.Mode is { } mode && f.Part == scope.Faults.FirstOrDefault(d => d.Id == decided)?.Part && test.Outcomes.Any(o => o.Given.ContainsKey(mode))))
                .OrderByDescending(f => f.Id == decided).ToDictionary(f => f.Id, f => f.Id == decided ? Present : f.Mode!, StringComparer.Ordinal)
            : scope.Faults
                .Where(f => (test.MeasuresRole is null || f.Role == test.MeasuresRole) && (test.MeasuresPart is null || f.Part == test.MeasuresPart))
                .Where(f => f.Mode is not null)
                .ToDictionary(f => f.Id, f => f.Mode!, StringComparer.Ordinal);

    private const string Present = "present";

    private static string Sound(Test test) => test.Decides is null ? "good" : "absent";

    private static ImmutableArray<double> Given(Test test, string mode)
    {
        var raw = test.Outcomes.Select(o => ChanceOf(o, mode)?.Probability ?? 1.0 / test.Outcomes.Length).ToArray();
        var sum = raw.Sum();
        return sum > 0 ? [.. raw.Select(p => p / sum)] : [.. raw.Select(_ => 1.0 / raw.Length)];
    }

    private static double Weight(Test test, string mode) =>
        test.Outcomes.Select(o => ChanceOf(o, mode)?.Weight).Max() ?? 2;

    private static Chance? ChanceOf(TestOutcome outcome, string mode) =>
        outcome.Given.GetValueOrDefault(mode) ?? (mode is "good" or "absent" ? null : outcome.Given.GetValueOrDefault("otherwise"));
}
