using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Exchange.Importing;

/// <summary>One column as a finding: from a cell to a value.</summary>
internal sealed class FindingCells
{
    /// <summary>More different cells than these are free text.</summary>
    public const int MostValues = 200;

    private const string Other = "other";

    private readonly FindingColumn column;
    private readonly bool mayGrow;
    private readonly Dictionary<string, string> valueByCell = new(StringComparer.Ordinal);
    private readonly List<(string Id, string Cell)> values = [];

    /// <param name="note">The finding that is there already; null for a new one.</param>
    public FindingCells(FindingColumn column, int index, string id, Finding? note)
    {
        (this.column, Index, Id, IsNew) = (column, index, id, note is null);
        mayGrow = IsNew && column.Values.IsEmpty;
        foreach (var cell in note is null ? column.Values : [])
            Add(cell);
        foreach (var value in note?.Values ?? [])
        {
            foreach (var cell in (string[])[value.Id, value.Name, WithoutColumn(value.Name)])
                valueByCell.TryAdd(cell, value.Id);
            values.Add((value.Id, value.Id));
        }
    }

    public int Index { get; }

    public string Id { get; }

    public bool IsNew { get; }

    public string Column => column.Column;

    public bool IsFreeText => values.Count > MostValues && mayGrow;

    public IEnumerable<string> Cells => values.Select(v => v.Cell);

    /// <summary>Null when the cell is none of the finding's values.</summary>
    public string? ValueOf(string cell) => valueByCell.TryGetValue(cell, out var id) ? id : mayGrow ? Add(cell) : null;

    /// <summary>The new finding; "column value" is how one says it, so that such a complaint is understood.</summary>
    public Finding Note(ImmutableArray<string> classes) => new(Id, column.Column)
    {
        Nominal = column.Order == ValueOrder.Nominal,
        Values = [.. Ordered().Select(v => new FindingValue(v.Id, $"{column.Column} {v.Cell}", [], null))],
        Classes = classes,
    };

    /// <summary>Values taken from the table have no order of their own; one alone would say nothing, so there is room for another.</summary>
    private IEnumerable<(string Id, string Cell)> Ordered() =>
        mayGrow ? [.. values.OrderBy(v => v.Cell, StringComparer.Ordinal), .. values.Count == 1 ? [(values[0].Id == Other ? "another" : Other, Other)] : Array.Empty<(string, string)>()] : values;

    private string Add(string cell)
    {
        var id = NoteIds.From(cell, "value");
        var free = id;
        for (var n = 2; values.Any(v => v.Id == free); n++)
            free = FormattableString.Invariant($"{id}-{n}");
        values.Add((free, cell));
        valueByCell[cell] = free;
        return free;
    }

    private string WithoutColumn(string name) =>
        name.StartsWith(column.Column + " ", StringComparison.Ordinal) ? name[(column.Column.Length + 1)..] : name;
}
