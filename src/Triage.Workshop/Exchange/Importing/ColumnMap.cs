using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Workshop.Exchange.Importing;

/// <summary>
/// How the columns of a table of past jobs become notes. Read from a JSON file (comments allowed) with <see cref="ColumnMapFile"/>;
/// names there are written with hyphens. What no setting names goes where <see cref="Others"/> says.
/// </summary>
public sealed record ColumnMap
{
    /// <summary>What parts the cells: one character, or "tab".</summary>
    public string Delimiter { get; init; } = ",";

    /// <summary>utf-8, latin1, windows-1252, iso-8859-2…</summary>
    public string Encoding { get; init; } = "utf-8";

    /// <summary>As in "dd.MM.yyyy HH:mm"; without hours noon is meant, without an offset UTC.</summary>
    public string DateFormat { get; init; } = "yyyy-MM-dd";

    public required IdColumn Id { get; init; }

    public required ClassColumn Class { get; init; }

    /// <summary>Column that names make and model; each name becomes a device note.</summary>
    public string? Device { get; init; }

    /// <summary>Column with what it says on the machine, when no device note is wanted for it.</summary>
    public string? Unit { get; init; }

    /// <summary>When it came in; the closing date unless said.</summary>
    public DateColumn? Opened { get; init; }

    /// <summary>When it was done; a job whose cell is empty stays open.</summary>
    public required DateColumn Closed { get; init; }

    public string? Complaint { get; init; }

    /// <summary>Column that names the cause; each name becomes a fault note. An empty cell: nobody said.</summary>
    public string? Cause { get; init; }

    /// <summary>How sure the causes are.</summary>
    public Grade Grade { get; init; } = Grade.Measured;

    public OutcomeColumn Outcome { get; init; } = new();

    /// <summary>Put before the ids of new findings, faults, devices and classes.</summary>
    public string NotePrefix { get; init; } = "";

    /// <summary>Cells that mean "not checked", beside the empty one: "NA", "?"…</summary>
    public ImmutableArray<string> NotChecked { get; init; } = [];

    public ImmutableArray<FindingColumn> Findings { get; init; } = [];

    /// <summary>What becomes of columns that are named nowhere.</summary>
    public OtherColumns Others { get; init; } = OtherColumns.Text;

    /// <summary>Columns kept as text below the job.</summary>
    public ImmutableArray<string> Text { get; init; } = [];

    /// <summary>Columns left out.</summary>
    public ImmutableArray<string> Ignore { get; init; } = [];

    internal char DelimiterSign => Delimiter == "tab" ? '\t' : Delimiter[0];
}

/// <summary>Ids of the jobs: prefix and cell, or without a column prefix and number of the row.</summary>
/// <param name="Prefix">Lower case letters, digits, hyphens; one prefix for one table.</param>
public sealed record IdColumn(string Prefix = "", string? Column = null);

/// <summary>The device class of all rows by id and name, or a column that names it; id and name are then for its empty cells.</summary>
public sealed record ClassColumn(string? Id = null, string? Name = null, string? Column = null);

/// <summary>A column of dates, or one date for all rows.</summary>
public sealed record DateColumn(string? Column = null, string? Fixed = null);

/// <summary>How it ended.</summary>
public sealed record OutcomeColumn
{
    /// <summary>Null: all rows ended as <see cref="Otherwise"/> says.</summary>
    public string? Column { get; init; }

    /// <summary>Outcome by cell.</summary>
    public ImmutableDictionary<string, JobOutcome> Values { get; init; } = ImmutableDictionary<string, JobOutcome>.Empty;

    /// <summary>Outcome of other cells; null: mended without a column, and with one such a row is rejected.</summary>
    public JobOutcome? Otherwise { get; init; }
}

/// <summary>A column whose cells are values of one finding; an empty cell was not checked.</summary>
public sealed record FindingColumn
{
    public required string Column { get; init; }

    /// <summary>Id of the finding, there already or new; made from the column's name unless said.</summary>
    public string? Finding { get; init; }

    /// <summary>All values, for an ordered finding the normal one first; empty: taken from the table.</summary>
    public ImmutableArray<string> Values { get; init; } = [];

    public ValueOrder Order { get; init; } = ValueOrder.Nominal;
}

public enum ValueOrder
{
    Nominal,

    /// <summary>From normal to worst.</summary>
    Ordered,
}

public enum OtherColumns
{
    Text,
    Finding,
    Ignore,
}
