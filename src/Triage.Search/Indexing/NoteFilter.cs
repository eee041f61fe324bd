using System.Collections.Immutable;
using Triage.Search.Queries;

namespace Triage.Search.Indexing;

/// <summary>Something notes are filtered and counted by.</summary>
/// <param name="Name">Also the name of the stored values.</param>
internal sealed record NoteFilter(
    string Name,
    Func<IndexedNote, ImmutableArray<string>> Values,
    Func<SearchQuery, ImmutableArray<string>> Chosen)
{
    public static IReadOnlyList<NoteFilter> All { get; } =
    [
        new("kind", n => [n.Kind], q => q.Kinds),
        new("device", n => n.DeviceIds, q => q.Devices),
        new("finding", n => n.FindingIds, q => q.Findings),
        new("cause", n => n.CauseIds, q => q.Causes),
        new("outcome", n => n.Outcome is null ? [] : [n.Outcome], q => q.Outcomes),
    ];

    /// <summary>Name of the column in the index.</summary>
    public string Column => $"by-{Name}";
}
