using System.Collections.Immutable;

namespace Triage.Reasoning.Learning;

/// <summary>What the notes say, checked and by id.</summary>
internal sealed class KnowledgeIndex
{
    readonly Dictionary<string, KnownFault> faults;
    readonly Dictionary<string, KnownFinding> findings;
    readonly ILookup<string, KnownFault> groups;
    readonly Dictionary<(string Fault, string Finding), KnownLink> links = [];
    readonly Dictionary<(string Action, string Fault), KnownClearing> clearings = [];
    readonly Dictionary<CheckedFinding, int> numbers = [];
    readonly Dictionary<string, int> compared = new(StringComparer.Ordinal);
    readonly Dictionary<string, int> scopeNumbers = new(StringComparer.Ordinal);
    readonly Dictionary<string, KnownScope> scopes;

    internal KnowledgeIndex(Knowledge knowledge)
    {
        Knowledge = knowledge;
        faults = ById(knowledge.Faults, fault => fault.Id, "fault");
        findings = ById(knowledge.Findings, finding => finding.Id, "finding");
        groups = knowledge.Faults.Where(fault => fault.Group is not null).ToLookup(fault => fault.Group!);
        foreach (KnownFinding finding in knowledge.Findings) Check(finding);
        foreach (KnownFinding finding in knowledge.Findings)
            foreach (string value in finding.Values) numbers.TryAdd(new(finding.Id, value), numbers.Count);
        foreach (KnownFault fault in knowledge.Faults) Add(fault);
        foreach (KnownAction action in knowledge.Actions) Add(action);
        for (int f = 0; f < knowledge.Faults.Length; f++)
            if (!knowledge.Faults[f].Apart) compared.Add(knowledge.Faults[f].Id, f);
        KnownScope[] inOrder = [KnownScope.Of(KnownScope.Anything, knowledge.Faults.Select(fault => fault.Id)), .. knowledge.Scopes.OrderBy(scope => scope.Id, StringComparer.Ordinal)];
        scopes = ById(inOrder, scope => scope.Id, "scope");
        foreach (KnownScope scope in inOrder) Check(scope);
        Scopes = Number(inOrder);
        NotedRates = NotedRates.Of(this);
    }

    internal Knowledge Knowledge { get; }

    internal KnownScope Scope(string id) => scopes[id];

    /// <summary>The scopes in a fixed order, first the one in which anything can be met.</summary>
    internal ImmutableArray<ScopeFaults> Scopes { get; }

    internal NotedRates NotedRates { get; }

    internal int? ScopeNumber(string id) => scopeNumbers.TryGetValue(id, out int number) ? number : null;

    /// <summary>Place of a fault in the notes; null for one that they do not list or that stands apart.</summary>
    internal int? Number(string fault) => compared.TryGetValue(fault, out int number) ? number : null;

    /// <summary>Chance that machines of a scope can have a fault; 0 for one that the notes do not list.</summary>
    internal double Availability(string scope, string fault) => scopes[scope].Availability.GetValueOrDefault(fault);

    /// <summary>Those of its faults whose rates are compared.</summary>
    internal ScopeFaults Compared(KnownScope scope)
    {
        (int Fault, double Chance)[] faults =
            [.. scope.Availability.Where(a => a.Value > 0 && compared.ContainsKey(a.Key)).Select(a => (compared[a.Key], a.Value)).OrderBy(a => a.Item1)];
        return new([.. faults.Select(a => a.Fault)], [.. faults.Select(a => a.Chance)]);
    }

    /// <summary>Faults of a group, in the order of the notes.</summary>
    internal IEnumerable<KnownFault> Group(string group) => groups[group];

    internal KnownFault? Fault(string id) => faults.GetValueOrDefault(id);

    /// <summary>Whether damage leads from one fault to another, over others if need be.</summary>
    internal bool LeadsTo(string from, string to)
    {
        var reached = new HashSet<string> { from };
        var next = new Queue<string>([from]);
        while (next.TryDequeue(out string? fault))
            foreach (string follows in Fault(fault)?.LeadsTo ?? [])
                if (reached.Add(follows)) next.Enqueue(follows);
        return reached.Contains(to) && from != to;
    }

    internal KnownFinding? Finding(string id) => findings.GetValueOrDefault(id);

    /// <summary>How many values all findings have together.</summary>
    internal int Values => numbers.Count;

    /// <summary>Values of all findings numbered through, those of one finding in a row; null for one that the notes do not know.</summary>
    internal int? Number(CheckedFinding seen) => numbers.TryGetValue(seen, out int number) ? number : null;

    internal KnownFinding NeededFinding(string id) => Finding(id)
        ?? throw new ArgumentException($"The notes know no finding '{id}'; add it to them first.");

    internal KnownLink? Link(string fault, string finding) => links.GetValueOrDefault((fault, finding));

    internal KnownClearing? Clearing(string action, string fault) => clearings.GetValueOrDefault((action, fault));

    void Add(KnownFault fault)
    {
        if (!(fault.Share >= 0 && double.IsFinite(fault.Share)))
            throw new ArgumentException($"Fault '{fault.Id}' has the share {fault.Share}; give a number of 0 or more.");
        CheckWeight(fault.ShareWeight, $"The share of fault '{fault.Id}'");
        foreach (KnownLink link in fault.Shows)
        {
            string what = $"The link from fault '{fault.Id}' to finding '{link.Finding}'";
            KnownFinding finding = Finding(link.Finding) ?? throw new ArgumentException($"{what} leads nowhere: the notes know no such finding.");
            CheckDistribution(link.Produces, finding, what);
            CheckWeight(link.Weight, what);
            if (!links.TryAdd((fault.Id, link.Finding), link)) throw new ArgumentException($"{what} is there twice; keep one.");
        }
    }

    void Add(KnownAction action)
    {
        foreach (KnownClearing clearing in action.Clears)
        {
            string what = $"What '{action.Id}' does to fault '{clearing.Fault}'";
            foreach (Estimate estimate in (Estimate[])[clearing.Works, clearing.Holds])
            {
                if (!(estimate.Mean is >= 0 and <= 1)) throw new ArgumentException($"{what} has the chance {estimate.Mean}; give one of 0 … 1.");
                CheckWeight(estimate.Weight, what);
            }
            if (!clearings.TryAdd((action.Id, clearing.Fault), clearing)) throw new ArgumentException($"{what} is there twice; keep one.");
        }
    }

    /// <summary>Scopes that hold the same faults are one.</summary>
    ImmutableArray<ScopeFaults> Number(IEnumerable<KnownScope> scopes)
    {
        var different = ImmutableArray.CreateBuilder<ScopeFaults>();
        var known = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (KnownScope scope in scopes)
        {
            ScopeFaults faults = Compared(scope);
            string content = string.Join(' ', faults.Faults.Zip(faults.Availability));
            if (known.TryAdd(content, different.Count)) different.Add(faults);
            scopeNumbers.Add(scope.Id, known[content]);
        }
        return different.ToImmutable();
    }

    internal void Check(KnownScope scope)
    {
        foreach (var (fault, chance) in scope.Availability)
        {
            if (Fault(fault) is null) throw new ArgumentException($"Scope '{scope.Id}' names the fault '{fault}', which the notes do not list; add it to them first.");
            if (!(chance is >= 0 and <= 1)) throw new ArgumentException($"Scope '{scope.Id}' can have the fault '{fault}' with the chance {chance}; give one of 0 … 1.");
        }
    }

    static void Check(KnownFinding finding)
    {
        string what = $"The ambient frequency of finding '{finding.Id}'";
        CheckDistribution(finding.Ambient, finding, what);
        CheckWeight(finding.AmbientWeight, what);
    }

    static void CheckDistribution(IReadOnlyCollection<double> chances, KnownFinding finding, string what)
    {
        if (chances.Count != finding.Values.Length)
            throw new ArgumentException($"{what} has {chances.Count} numbers for {finding.Values.Length} values; give one for each.");
        if (chances.Any(chance => !(chance >= 0)) || Math.Abs(chances.Sum() - 1) > 1e-9)
            throw new ArgumentException($"{what} must be chances of 0 … 1 that sum to 1; they are {string.Join(", ", chances)}.");
    }

    static void CheckWeight(double weight, string what)
    {
        if (!(weight >= 0)) throw new ArgumentException($"{what} has the weight {weight}; give a number of pseudo-jobs of 0 or more.");
    }

    static Dictionary<string, T> ById<T>(IEnumerable<T> items, Func<T, string> id, string kind)
    {
        var table = new Dictionary<string, T>();
        foreach (T item in items)
            if (!table.TryAdd(id(item), item)) throw new ArgumentException($"There are two {kind}s '{id(item)}'; ids must differ.");
        return table;
    }
}
