using System.Collections.Immutable;
using CsvHelper;

namespace Triage.Workshop.Exchange.Importing;

/// <summary>A table row by row, never whole in memory.</summary>
internal sealed class TableReader : IDisposable
{
    /// <summary>Longest row, in bytes: beyond it a quote was never closed.</summary>
    private const int LongestRow = 4_000_000;

    private const char Undecodable = '\uFFFD';

    private readonly CsvReader csv;
    private readonly string encoding;
    private CsvMalformedReason? malformed;

    private TableReader(StreamReader text, ColumnMap map)
    {
        encoding = map.Encoding;
        csv = CsvReader.Create(text, CsvReaderOptions.Default with
        {
            Separator = map.DelimiterSign,
            HasHeader = false,
            SkipEmptyLines = true,
            MaxRecordSize = LongestRow,
            TrackLineNumbers = true,
            OnMalformedRecord = bad => malformed = bad.Reason,
        }, leaveOpen: false);
        Header = Next() ? [.. Cells().Select(c => c.Trim())] : [];
    }

    public ImmutableArray<string> Header { get; }

    /// <exception cref="IOException">The file cannot be opened.</exception>
    /// <exception cref="ImportRefusedException">A cell does not end.</exception>
    public static TableReader Open(string file, ColumnMap map) => new(new(file, TableEncoding.Find(map.Encoding)!, detectEncodingFromByteOrderMarks: true), map);

    /// <exception cref="ImportRefusedException">A cell does not end.</exception>
    public IEnumerable<TableRow> Rows()
    {
        for (var number = 1; Next(); number++)
        {
            var cells = Cells();
            yield return new(number, csv.LineNumber, cells, Broken(cells));
        }
    }

    private bool Next()
    {
        malformed = null;
        try
        {
            var read = csv.Read();
            return malformed != CsvMalformedReason.UnterminatedQuote ? read : throw new ImportRefusedException(ImportTexts.CellWithoutEnd(csv.LineNumber));
        }
        catch (CsvFormatException e)
        {
            throw new ImportRefusedException(ImportTexts.CellWithoutEnd(e.LineNumber));
        }
    }

    private string[] Cells() => [.. Enumerable.Range(0, csv.FieldCount).Select(csv.GetString)];

    /// <summary>A quote within bare words means itself (5" drive); behind a quoted cell it does not say where the cell ends.</summary>
    private string? Broken(string[] cells) =>
        malformed == CsvMalformedReason.TextAfterClosingQuote ? ImportTexts.BadQuotes
        : cells.Length != Header.Length ? ImportTexts.WrongCells(cells.Length, Header.Length)
        : cells.Any(c => c.Contains('\0', StringComparison.Ordinal)) ? ImportTexts.ZeroByte
        : cells.Any(c => c.Contains(Undecodable, StringComparison.Ordinal)) ? ImportTexts.NotInEncoding(encoding)
        : null;

    public void Dispose() => csv.Dispose();
}

/// <param name="Number">From 1, the header not counted.</param>
/// <param name="Line">Line of the file on which it starts, from 1.</param>
/// <param name="Broken">Why it cannot be used; null when it can.</param>
internal sealed record TableRow(int Number, long Line, string[] Cells, string? Broken);
