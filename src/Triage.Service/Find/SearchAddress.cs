using System.Collections.Immutable;
using Microsoft.AspNetCore.Http;
using Triage.Search.Queries;

namespace Triage.Service.Find;

/// <summary>A search as its address says it.</summary>
public sealed record SearchAddress(SearchQuery Query)
{
    private const int Page = 20;

    private static readonly string[] Names = ["kind", "device", "finding", "cause", "outcome"];

    public static SearchAddress Of(IQueryCollection address) => new(new SearchQuery(address["q"].ToString())
    {
        Kinds = Values(address, "kind"),
        Devices = Values(address, "device"),
        Findings = Values(address, "finding"),
        Causes = Values(address, "cause"),
        Outcomes = Values(address, "outcome"),
        Sort = Enum.TryParse<SearchSort>(address["sort"], ignoreCase: true, out var sort) && Enum.IsDefined(sort) ? sort : SearchSort.Relevance,
        Like = address["like"].ToString() is { Length: > 0 } like ? like : null,
        Unfinished = true,
        Take = Page,
    });

    public bool Chosen(string filter, string value) => Chosen(filter).Contains(value);

    /// <summary>The address with one value more, or without it when it is chosen already.</summary>
    public string With(string filter, string value)
    {
        var pairs = Filters.ToList();
        if (!pairs.Remove((filter, value)))
            pairs.Add((filter, value));
        return Address(Query.Text, pairs);
    }

    /// <summary>The address with other words, everything else as it is.</summary>
    public string Saying(string words) => Address(words, Filters);

    /// <summary>Every value that is chosen, and the note that others are to be like.</summary>
    public IEnumerable<(string Filter, string Value)> Filters =>
        [.. Names.SelectMany(f => Chosen(f).Select(v => (f, v))), .. Query.Like is { } like ? [("like", like)] : Array.Empty<(string, string)>()];

    private string Address(string words, IEnumerable<(string Filter, string Value)> pairs) =>
        $"/find{QueryString.Create([new("q", words), .. pairs.Select(p => KeyValuePair.Create(p.Filter, (string?)p.Value)), .. Order])}";

    private IEnumerable<KeyValuePair<string, string?>> Order =>
        Query.Sort == SearchSort.Relevance ? [] : [new("sort", Query.Sort.ToString().ToLowerInvariant())];

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
