using System.Collections.Immutable;

namespace Triage.Search.Indexing;

/// <summary>Something notes are filtered and counted by.</summary>
/// <param name="Name">Also the name of the stored values.</param>
internal sealed record NoteFilter(string Name, Func<IndexedNote, ImmutableArray<string>> Values)
{
    public const string Kind = "kind", Device = "device", Finding = "finding", Cause = "cause", Outcome = "outcome";

    public static IReadOnlyList<NoteFilter> All { get; } =
    [
        new(Kind, n => [n.Kind]),
        new(Device, n => n.DeviceIds),
        new(Finding, n => n.FindingIds),
        new(Cause, n => n.CauseIds),
        new(Outcome, n => n.Outcome is null ? [] : [n.Outcome]),
    ];

    /// <summary>Name of the column in the index.</summary>
    public string Column => $"by-{Name}";
}
