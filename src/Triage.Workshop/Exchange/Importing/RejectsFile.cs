using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using CsvHelper;
using Triage.Workshop.Books;

namespace Triage.Workshop.Exchange.Importing;

/// <summary>Rejected rows as a table with the same columns: mended, it can be brought in with the same map.</summary>
internal static class RejectsFile
{
    /// <summary>Columns put before those of the table.</summary>
    public const string Row = "rejected row", Reason = "rejected because";

    /// <summary>In UTF-8, with the map's delimiter; a file of an earlier run goes when there is nothing to reject.</summary>
    public static void Write(string file, ColumnMap map, ImmutableArray<string> header, IReadOnlyList<(TableRow Row, string Reason)> rejects)
    {
        if (rejects.Count == 0)
        {
            File.Delete(file);
            return;
        }

        var own = header.Contains(Row) ? 2 : 0;
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        using (var csv = CsvWriter.Create(text, CsvWriterOptions.Default with { Separator = map.DelimiterSign, ValidateFieldCount = false }, leaveOpen: true))
        {
            csv.WriteRecord([Row, Reason, .. header.Skip(own)]);
            foreach (var (row, reason) in rejects)
                csv.WriteRecord([own > 0 ? row.Cells.FirstOrDefault("") : row.Number.ToString(CultureInfo.InvariantCulture), reason, .. row.Cells.Skip(own)]);
        }

        WholeFile.Write(file, Encoding.UTF8.GetBytes(text.ToString()), still: () => true);
    }
}
