using Triage.Notes.Kinds;
using Triage.Notes.Writing;

namespace Triage.Workshop.Stock;

/// <summary>Parts of one kind lying together in the drawer.</summary>
/// <param name="Part">Part class id.</param>
/// <param name="Count">How many, 0 or more; 0 keeps the place.</param>
public sealed record StockItem(string Part, int Count)
{
    /// <summary>More than any drawer holds (common practice, no source).</summary>
    internal const int Most = 1_000_000;

    /// <summary>Value or marking; null when not said.</summary>
    public string? Rating { get; init; }

    /// <summary>"tin 2, left"; null when not said.</summary>
    public string? Where { get; init; }

    /// <summary>Each was tested and found good.</summary>
    public bool Tested { get; init; }

    /// <summary>What tells it from the others in the drawer.</summary>
    public string Key => string.Join('|', Part, Rating, Where, Tested ? "tested" : "");

    /// <summary>What a job's log says when one of these is taken for it.</summary>
    internal PartMoved Taken => new(default, Part, Tested ? PartState.TestedGood : PartState.Arrived)
    {
        Price = 0, From = Where is null ? "the drawer" : $"the drawer, {Where}", Note = Rating, FromDrawer = true,
    };

    /// <summary>An entry of a job's log that says that one of these was taken.</summary>
    internal bool IsIn(PartMoved entry) =>
        entry.FromDrawer && (entry.Part, entry.State, entry.From, entry.Note) == (Taken.Part, Taken.State, Taken.From, Taken.Note);

    internal YamlFields Written() => new FieldWriter()
        .Text("part", Part).Text("rating", Rating).Number("count", Count).Text("where", Where).Mark("tested", Tested).OnOneLine;
}
