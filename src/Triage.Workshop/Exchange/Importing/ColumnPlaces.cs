using System.Collections.Immutable;

namespace Triage.Workshop.Exchange.Importing;

/// <summary>Where the columns that a map names stand in one table.</summary>
internal sealed record ColumnPlaces
{
    public int? Id { get; private init; }

    public int? Class { get; private init; }

    public int? Device { get; private init; }

    public int? Unit { get; private init; }

    public int? Opened { get; private init; }

    public int? Closed { get; private init; }

    public int? Complaint { get; private init; }

    public int? Cause { get; private init; }

    public int? Outcome { get; private init; }

    /// <summary>The number that a row had in the table from which it was rejected.</summary>
    public int? RejectedRow { get; private init; }

    public ImmutableArray<(FindingColumn Column, int Index)> Findings { get; private init; }

    public ImmutableArray<(string Name, int Index)> Text { get; private init; }

    /// <exception cref="ImportRefusedException">The table lacks a column, or names one twice.</exception>
    public static ColumnPlaces Of(ColumnMap map, ImmutableArray<string> header)
    {
        if (header.GroupBy(h => h, StringComparer.Ordinal).FirstOrDefault(g => g.Skip(1).Any() || g.Key.Length == 0) is { } twice)
            throw new ImportRefusedException(ImportTexts.ColumnTwice(twice.Key));
        int? At(string? column) => column is null ? null : header.IndexOf(column) is var at and >= 0 ? at : throw new ImportRefusedException(ImportTexts.NoSuchColumn(column, header));
        _ = map.Ignore.Select(At).Count(at => at >= 0);
        var named = new[] { map.Id.Column, map.Class.Column, map.Device, map.Unit, map.Opened?.Column, map.Closed.Column, map.Complaint, map.Cause, map.Outcome.Column, RejectsFile.Row, RejectsFile.Reason }
            .Concat(map.Findings.Select(f => f.Column)).Concat(map.Text).Concat(map.Ignore).ToHashSet();
        var others = header.Where(h => !named.Contains(h)).ToList();
        var findings = map.Findings.Concat(map.Others == OtherColumns.Finding ? others.Select(o => new FindingColumn { Column = o }) : []);
        var text = map.Text.Concat(map.Others == OtherColumns.Text ? others : []);
        return new()
        {
            Id = At(map.Id.Column),
            Class = At(map.Class.Column),
            Device = At(map.Device),
            Unit = At(map.Unit),
            Opened = At(map.Opened?.Column),
            Closed = At(map.Closed.Column),
            Complaint = At(map.Complaint),
            Cause = At(map.Cause),
            Outcome = At(map.Outcome.Column),
            RejectedRow = header.Contains(RejectsFile.Row) ? header.IndexOf(RejectsFile.Row) : null,
            Findings = [.. findings.Select(f => (f, At(f.Column)!.Value))],
            Text = [.. text.Select(t => (t, At(t)!.Value))],
        };
    }
}

/// <summary>Nothing is brought in, and why.</summary>
internal sealed class ImportRefusedException(Refusal refusal) : Exception(refusal.ToString())
{
    public Refusal Refusal => refusal;
}
