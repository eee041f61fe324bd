using System.Collections.Immutable;
using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;

namespace Triage.Workshop.Importing;

/// <summary>A table row by row, never whole in memory.</summary>
internal sealed class TableReader : IDisposable
{
    /// <summary>Longest cell, in characters: beyond it a quote was never closed.</summary>
    private const int LongestCell = 1_000_000;

    private const char Undecodable = '\uFFFD';

    private readonly CsvParser parser;
    private readonly string encoding;
    private bool badQuotes;

    private TableReader(StreamReader text, ColumnMap map)
    {
        encoding = map.Encoding;
        parser = new(text, new CsvConfiguration(CultureInfo.InvariantCulture)
        {
            Delimiter = map.Delimiter == "tab" ? "\t" : map.Delimiter,
            MaxFieldSize = LongestCell,
            // a quote within bare words means itself (5" drive); one within a quoted cell does not say where the cell ends
            BadDataFound = bad => badQuotes |= bad.Field.StartsWith('"'),
        });
        Header = parser.Read() ? [.. parser.Record!.Select(c => c.Trim())] : [];
    }

    public ImmutableArray<string> Header { get; }

    /// <exception cref="IOException">The file cannot be opened.</exception>
    public static TableReader Open(string file, ColumnMap map) => new(new(file, TableEncoding.Find(map.Encoding)!, detectEncodingFromByteOrderMarks: true), map);

    /// <exception cref="MaxFieldSizeException">A cell does not end.</exception>
    public IEnumerable<TableRow> Rows()
    {
        for (var number = 1; Next(); number++)
        {
            var line = parser.RawRow;
            badQuotes = false;
            var cells = parser.Record!;
            yield return new(number, line, cells, Broken(cells));
        }
    }

    private bool Next() => parser.Read();

    private string? Broken(string[] cells) =>
        badQuotes ? ImportTexts.BadQuotes
        : cells.Length != Header.Length ? ImportTexts.WrongCells(cells.Length, Header.Length)
        : cells.Any(c => c.Contains(Undecodable, StringComparison.Ordinal)) ? ImportTexts.NotInEncoding(encoding)
        : null;

    public void Dispose() => parser.Dispose();
}

/// <param name="Number">From 1, the header not counted.</param>
/// <param name="Line">Line of the file on which it ends, from 1.</param>
/// <param name="Broken">Why it cannot be used; null when it can.</param>
internal sealed record TableRow(int Number, int Line, string[] Cells, string? Broken);
