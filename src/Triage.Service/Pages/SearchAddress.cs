using System.Collections.Immutable;
using Microsoft.AspNetCore.Http;
using Triage.Search.Queries;

namespace Triage.Service.Pages;

/// <summary>A search as its address says it.</summary>
public sealed record SearchAddress(SearchQuery Query)
{
    private const int Page = 20;

    public static SearchAddress Of(IQueryCollection address) => new(new SearchQuery(address["q"].ToString())
    {
        Kinds = Values(address, "kind"),
        Devices = Values(address, "device"),
        Findings = Values(address, "finding"),
        Causes = Values(address, "cause"),
        Outcomes = Values(address, "outcome"),
        Take = Page,
    });

    public bool Chosen(string filter, string value) => Chosen(filter).Contains(value);

    /// <summary>The address with one value more, or without it when it is chosen already.</summary>
    public string With(string filter, string value)
    {
        var pairs = new[] { "kind", "device", "finding", "cause", "outcome" }.SelectMany(f => Chosen(f).Select(v => (Filter: f, Value: v))).ToList();
        if (!pairs.Remove((filter, value)))
            pairs.Add((filter, value));
        return $"/find{QueryString.Create([new("q", Query.Text), .. pairs.Select(p => KeyValuePair.Create(p.Filter, (string?)p.Value))])}";
    }

    private ImmutableArray<string> Chosen(string filter) => filter switch
    {
        "kind" => Query.Kinds,
        "device" => Query.Devices,
        "finding" => Query.Findings,
        "cause" => Query.Causes,
        _ => Query.Outcomes,
    };

    private static ImmutableArray<string> Values(IQueryCollection address, string name) => [.. address[name].OfType<string>().Where(v => v.Length > 0)];
}
