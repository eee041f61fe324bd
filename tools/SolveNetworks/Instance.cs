using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Nodes;
using Triage.Reasoning.Networks;

namespace Triage.Tools.SolveNetworks;

/// <summary>One network with evidence, as the file says it.</summary>
public sealed record Instance(
    string Id,
    IReadOnlyList<Instance.RootRow> Roots,
    IReadOnlyList<Instance.FindingRow> Findings,
    Instance.EvidenceRow Evidence,
    [property: JsonPropertyName("condition_any_faulty")] bool ConditionAnyFaulty)
{
    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web)
    {
        RespectRequiredConstructorParameters = true,
        RespectNullableAnnotations = true,
    };

    public static Instance Read(JsonNode? node)
    {
        var instance = node.Deserialize<Instance>(Options) ?? throw new InvalidDataException("It is null.");
        instance.RequireWhole();
        instance.RequireUniqueIds();
        return instance;
    }

    public Network Network => new(
        [.. Roots.Select(r => new Root(r.Id, [.. r.States.Select((s, i) => new RootState(s, i == 0 ? [] : [$"{r.Id}/{s}"]))], [.. r.Prior]))],
        [.. Findings.Select(f => new Finding(f.Id, ["absent", "present"], [1 - f.Leak, f.Leak], [.. f.Links.Select(LinkOf)]))])
    {
        SomethingIsWrong = ConditionAnyFaulty,
    };

    public Evidence Seen => new()
    {
        Observations =
        [
            .. Evidence.Present.Select(f => new Observation(IndexOfFinding(f), 1)),
            .. Evidence.Absent.Select(f => new Observation(IndexOfFinding(f), 0)),
        ],
        Likelihoods = [.. Evidence.Likelihood.Select(l => new RootLikelihood(IndexOfRoot(l.Key), [.. l.Value]))],
    };

    private void RequireWhole()
    {
        if (Roots.Contains(null!) || Findings.Contains(null!) || Findings.Any(f => f.Links.Contains(null!)) || Evidence.Likelihood.Values.Contains(null!))
        {
            throw new InvalidDataException("There is a null among its roots, findings, links or likelihoods.");
        }
    }

    private void RequireUniqueIds()
    {
        var twice = Roots.Select(r => r.Id).GroupBy(id => id).Concat(Findings.Select(f => f.Id).GroupBy(id => id)).FirstOrDefault(g => g.Count() > 1);
        if (twice is not null)
        {
            throw new InvalidDataException($"The id '{twice.Key}' is given twice.");
        }
    }

    private Link LinkOf(LinkRow link)
    {
        var root = IndexOfRoot(link.Root);
        return new(root, Index(Roots[root].States, s => s == link.Mode, $"{link.Root}/{link.Mode}"), [1 - link.Lambda, link.Lambda]);
    }

    private int IndexOfRoot(string id) => Index(Roots, r => r.Id == id, id);

    private int IndexOfFinding(string id) => Index(Findings, f => f.Id == id, id);

    private static int Index<T>(IReadOnlyList<T> items, Predicate<T> match, string name)
    {
        var index = items.ToList().FindIndex(match);
        return index >= 0 ? index : throw new InvalidDataException($"It speaks of '{name}', which it does not list.");
    }

    public sealed record RootRow(string Id, IReadOnlyList<string> States, IReadOnlyList<double> Prior);

    public sealed record FindingRow(string Id, double Leak, IReadOnlyList<LinkRow> Links);

    public sealed record LinkRow(string Root, string Mode, double Lambda);

    public sealed record EvidenceRow(IReadOnlyList<string> Present, IReadOnlyList<string> Absent, IReadOnlyDictionary<string, double[]> Likelihood);
}
