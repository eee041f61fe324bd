using System.Collections.Immutable;
using System.Globalization;
using Triage.Notes.Kinds;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Exchange.Importing;

/// <summary>Rows of a table as jobs, with the notes that they need.</summary>
internal sealed class JobFromRow
{
    /// <summary>More different causes than these are free text.</summary>
    private const int MostCauses = 2_000;

    private readonly ColumnMap map;
    private readonly ColumnPlaces places;
    private readonly ExistingNotes existing;
    private readonly NamedNotes notes;
    private readonly ImmutableArray<FindingCells> findings;
    private readonly HashSet<string> notChecked;
    private readonly HashSet<string> classes = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> rowOf = new(StringComparer.Ordinal);
    private int causes;

    public JobFromRow(ColumnMap map, ImmutableArray<string> header, ExistingNotes existing)
    {
        (this.map, this.existing) = (map, existing);
        places = ColumnPlaces.Of(map, header);
        notes = new(existing.Knowledge, map.NotePrefix, id => existing.JobIds.Contains(id) || rowOf.ContainsKey(id));
        notChecked = [.. map.NotChecked, ""];
        findings = [.. places.Findings.Select(f => Cells(f.Column, f.Index))];
    }

    /// <summary>Notes that are not there yet, findings with the values met so far.</summary>
    public ImmutableArray<Note> NewNotes => [.. notes.New, .. findings.Where(f => f.IsNew && f.Cells.Any()).Select(f => f.Note([.. classes.Order(StringComparer.Ordinal)]))];

    /// <summary>Notes of the open books that the table names.</summary>
    public IEnumerable<Note> KnownNotes => notes.Met;

    /// <summary>The job of a row, why there is none, or neither when it was brought in before.</summary>
    /// <exception cref="ImportRefusedException">A column turns out to be free text.</exception>
    public (Job? Job, string? Reason) Of(TableRow row)
    {
        if (row.Broken is { } broken)
            return (null, broken);
        var (id, noId) = IdOf(row);
        if (id is null)
            return (null, noId);
        if (!rowOf.TryAdd(id, row.Number))
            return (null, ImportTexts.IdTaken(id, rowOf[id]));
        if (existing.JobIds.Contains(id))
            return (null, null);
        if (notes.IsTaken(id))
            return (null, ImportTexts.IdOfOther(id));
        return Job(id, row.Cells);
    }

    /// <summary>Everything that can be wrong is looked at first: a rejected row makes no notes.</summary>
    private (Job?, string?) Job(string id, string[] cells)
    {
        var (opened, closed, noDate) = Dates(cells);
        var (outcome, noOutcome) = closed is null ? default : Outcome(cells);
        var noValue = findings.Where(f => Checked(cells[f.Index]) is { } cell && f.ValueOf(cell) is null)
            .Select(f => ImportTexts.NoValue(cells[f.Index], f.Column, f.Cells)).FirstOrDefault();
        var noClass = places.Class is { } c && cells[c].Trim().Length == 0 && map.Class.Id is null ? ImportTexts.NoClass(map.Class.Column!) : null;
        if ((noDate ?? noOutcome ?? noValue ?? noClass) is { } reason)
            return (null, reason);
        if (findings.FirstOrDefault(f => f.IsFreeText) is { } text)
            throw new ImportRefusedException(ImportTexts.TooManyValues(text.Column, FindingCells.MostValues));
        var deviceClass = ClassOf(cells);
        classes.Add(deviceClass.Id);
        var device = Device(cells, deviceClass);
        var unit = Cell(cells, places.Unit);
        var complaint = places.Complaint is { } at ? cells[at] : "";
        var cause = Cell(cells, places.Cause);
        return (new(id, $"{device?.Name ?? unit ?? deviceClass.Name}: {FirstWords(complaint.Length > 0 ? complaint : cause ?? id)}")
        {
            Device = device?.Id,
            Class = device is null ? deviceClass.Id : null,
            Unit = unit,
            Opened = opened,
            Closed = closed,
            Complaint = complaint,
            Outcome = outcome,
            Log = [.. from f in findings let cell = Checked(cells[f.Index]) where cell is not null select new Saw(opened, f.Id, f.ValueOf(cell)!)],
            Causes = cause is null ? [] : [new(CauseOf(cause, deviceClass).Id, map.Grade)],
            Body = Body(cells),
        }, null);
    }

    private (string? Id, string? Reason) IdOf(TableRow row)
    {
        if (places.Id is not { } at)
            return (map.Id.Prefix + RowNumber(row).ToString("00000", CultureInfo.InvariantCulture), null);
        var own = NoteIds.From(row.Cells[at], "");
        return own.Length > 0 ? (map.Id.Prefix + own, null) : (null, ImportTexts.NoId(map.Id.Column!));
    }

    private int RowNumber(TableRow row) =>
        places.RejectedRow is { } at && int.TryParse(row.Cells[at], NumberStyles.None, CultureInfo.InvariantCulture, out var before) ? before : row.Number;

    private (DateTimeOffset Opened, DateTimeOffset? Closed, string? Reason) Dates(string[] cells)
    {
        var (closed, noClosed) = Date(cells, map.Closed, places.Closed);
        var (opened, noOpened) = map.Opened is null ? (closed, null) : Date(cells, map.Opened, places.Opened);
        if ((noClosed ?? noOpened) is { } reason)
            return (default, null, reason);
        if ((opened ?? closed) is not { } from)
            return (default, null, ImportTexts.NoDate("", map.DateFormat));
        return closed < from
            ? (default, null, ImportTexts.ClosedBeforeOpened(Notes.Parsing.NoteDate.Write(closed.Value), Notes.Parsing.NoteDate.Write(from)))
            : (from, closed, null);
    }

    private (DateTimeOffset? Date, string? Reason) Date(string[] cells, DateColumn column, int? at)
    {
        if (column.Fixed is { } all)
            return (TableDate.Read(all, map.DateFormat), null);
        return Cell(cells, at) is not { } cell ? default
            : TableDate.Read(cell, map.DateFormat) is { } date ? (date, null)
            : (null, ImportTexts.NoDate(cell, map.DateFormat));
    }

    private (JobOutcome? Outcome, string? Reason) Outcome(string[] cells)
    {
        if (places.Outcome is not { } at)
            return (map.Outcome.Otherwise ?? JobOutcome.Mended, null);
        var cell = cells[at].Trim();
        if (map.Outcome.Values.TryGetValue(cell, out var outcome))
            return (outcome, null);
        return map.Outcome.Otherwise is { } otherwise ? (otherwise, null) : (null, ImportTexts.NoOutcome(cell, map.Outcome.Column!));
    }

    private DeviceClass ClassOf(string[] cells)
    {
        if (places.Class is { } at && cells[at].Trim().Length > 0)
            return notes.Named(cells[at].Trim(), id => new DeviceClass(id, cells[at].Trim()));
        return notes.WithId<DeviceClass>(map.Class.Id!) ?? notes.Add(map.Class.Name!, new DeviceClass(map.Class.Id!, map.Class.Name!));
    }

    private Device? Device(string[] cells, DeviceClass deviceClass) =>
        Cell(cells, places.Device) is { } name ? notes.Named(name, id => new Device(id, name) { Class = deviceClass.Id }) : null;

    private Fault CauseOf(string name, DeviceClass deviceClass) => notes.Named(name, id => ++causes <= MostCauses
        ? new Fault(id, name) { Class = places.Class is null ? deviceClass.Id : null }
        : throw new ImportRefusedException(ImportTexts.TooManyCauses(map.Cause!, MostCauses)));

    /// <summary>The finding that the map names, the one that is called like the column, or a new one.</summary>
    private FindingCells Cells(FindingColumn column, int index)
    {
        var note = column.Finding is { } named ? notes.WithId<Finding>(named) : notes.Known<Finding>(column.Column);
        var id = note?.Id ?? column.Finding ?? notes.FreeId(column.Column);
        notes.Keep(id);
        return new(column, index, id, note);
    }

    private string Body(string[] cells) =>
        string.Concat(places.Text.Where(t => cells[t.Index].Length > 0).Select(t => $"{t.Name}: {cells[t.Index]}\n\n"));

    private static string? Cell(string[] cells, int? at) => at is { } i && cells[i].Trim() is { Length: > 0 } cell ? cell : null;

    private string? Checked(string cell) => notChecked.Contains(cell.Trim()) ? null : cell.Trim();

    private static string FirstWords(string text)
    {
        var words = string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        if (words.Length <= 60)
            return words;
        var cut = char.IsHighSurrogate(words[58]) ? 58 : 59;
        return words[..cut] + "…";
    }
}
