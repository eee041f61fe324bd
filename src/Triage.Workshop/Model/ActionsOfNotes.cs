using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Reasoning.Learning;
using Triage.Reasoning.Networks;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Model;

/// <summary>What each reset and fix that applies to a device does to the states of its roots.</summary>
public sealed class ActionsOfNotes
{
    private readonly DeviceNetwork network;
    private readonly Notebook notes;
    private readonly Learned learned;
    private readonly Dictionary<string, Mend> fixes;
    private readonly ILookup<string, string> covers;

    public ActionsOfNotes(DeviceNetwork network, Notebook notes, Learned learned)
    {
        (this.network, this.notes, this.learned) = (network, notes, learned);
        var mends = network.Scope.Faults.SelectMany(f => f.Mends.Select(m => (Fault: f.Id, Mend: m))).ToList();
        covers = mends.ToLookup(m => m.Mend.Id, m => m.Fault, StringComparer.Ordinal);
        fixes = mends.Select(m => m.Mend.Id).Distinct(StringComparer.Ordinal)
            .Select(id => (Id: id, Definition: Definition(id)))
            .Where(f => f.Definition is not null)
            .ToDictionary(f => f.Id, f => f.Definition!, StringComparer.Ordinal);
    }

    /// <summary>Fixes that a listed fault of this device names, as their defining note describes them.</summary>
    public IReadOnlyDictionary<string, Mend> Fixes => fixes;

    public string GeneralForm(string id) => notes.Find<Reset>(id) is { } reset ? reset.FormOf ?? reset.Id : id;

    /// <summary>Null when neither a reset nor a fix of this device has the id.</summary>
    public ImmutableArray<Clearing>? Clearings(string id) =>
        id == AlwaysThere.HandBack ? HandedBack() :
        id == AlwaysThere.Exchange ? Exchanged() :
        notes.Find<Reset>(id) is not null ? ClearedBy(GeneralForm(id), ResetFaults(GeneralForm(id)))
        : fixes.ContainsKey(id) ? ClearedBy(id, covers[id])
        : null;

    private ImmutableArray<Clearing> HandedBack() =>
        network.Faults.TryGetValue(SpecialFaults.NothingWrong, out var places)
            ? [.. places.Select(p => new Clearing(p.Root, p.State, AlwaysThere.HandBackWorks))]
            : [];

    /// <summary>Whatever is wrong in the old one goes with it.</summary>
    private ImmutableArray<Clearing> Exchanged() =>
        [.. network.Faults.Where(f => f.Key != SpecialFaults.NothingWrong && notes.Find<Fault>(f.Key) is not { NothingWrong: true })
            .SelectMany(f => f.Value).Distinct().Order().Select(p => new Clearing(p.Root, p.State, AlwaysThere.ExchangeWorks))];

    /// <summary>Ids of the tests that decide a fault which a fix covers, or measure its part.</summary>
    public IEnumerable<string> ChecksOf(string fix)
    {
        var mended = network.Scope.Faults.Where(f => covers[fix].Contains(f.Id)).ToList();
        return network.Scope.Tests.Where(t => mended.Exists(t.DecidesOrMeasures)).Select(t => t.Id);
    }

    private IEnumerable<string> ResetFaults(string id) =>
        notes.Find<Reset>(id) is { } reset ? reset.Clears.Select(c => notes.Today(c.Fault)) : [];

    private Mend? Definition(string id) =>
        network.Scope.Faults.SelectMany(f => f.Mends).FirstOrDefault(m => m.Id == id && m.Name is not null)
        ?? notes.Mend(id);

    /// <summary>Of a state the named faults go together; what is left is the state of that root with exactly the others.</summary>
    private ImmutableArray<Clearing> ClearedBy(string action, IEnumerable<string> faults)
    {
        var named = faults.ToHashSet(StringComparer.Ordinal);
        return
        [
            .. named.Where(network.Faults.ContainsKey).SelectMany(f => network.Faults[f]).Distinct().Order()
                .Select(place => (place, Faults: network.FaultsIn(place.Root, place.State).ToList()))
                .Select(p => (p.place, Gone: p.Faults.Where(named.Contains), Leaves: Left(p.place.Root, p.Faults.Where(f => !named.Contains(f)))))
                .Where(p => p.Leaves >= 0)
                .Select(p => new Clearing(p.place.Root, p.place.State, Product(p.Gone, f => learned.Works(action, f)), Product(p.Gone, f => learned.Holds(action, f)), p.Leaves)),
        ];
    }

    /// <summary>The state with exactly these faults; 0 for none, below 0 when the root has no such state.</summary>
    private int Left(int root, IEnumerable<string> faults)
    {
        var left = faults.ToHashSet(StringComparer.Ordinal);
        return network.Network.Roots[root].States.Index().Where(s => left.SetEquals(s.Item.Faults)).Select(s => s.Index).DefaultIfEmpty(-1).First();
    }

    private static double Product(IEnumerable<string> faults, Func<string, Estimate?> chance) =>
        faults.Aggregate(1.0, (product, f) => product * (chance(f)?.Mean ?? 0));
}
