using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Exchange.Importing;

/// <summary>
/// A first column map for a table never seen before, guessed from its header and first rows (common practice, no source). It is
/// to be read and mended by a person; what it cannot tell stays text below the job, and a cause is never more than told.
/// </summary>
public static class SuggestedMap
{
    private static readonly string[] DateFormats =
    [
        "yyyy-MM-dd", "yyyy-MM-dd HH:mm:ss", "yyyy-MM-dd HH:mm", "yyyy-MM-ddTHH:mm:ssK", "yyyy-MM-ddTHH:mm:ss.fffK", "yyyy/MM/dd", "yyyyMMdd",
        "d/M/yyyy", "M/d/yyyy", "d.M.yyyy", "d-M-yyyy", "d/M/yyyy HH:mm", "M/d/yyyy HH:mm", "d.M.yyyy HH:mm", "d MMM yyyy", "MMM d, yyyy",
    ];

    private static readonly (JobOutcome Outcome, string[] Starts)[] Outcomes =
    [
        (JobOutcome.PartedOut, ["end of life", "end-of-life", "beyond", "scrap", "not repairable", "irrepar", "schrott", "parted", "recycl"]),
        (JobOutcome.Unsolved, ["repairable", "not fixed", "not repaired", "unknown", "unfixed", "failed", "no", "offen", "nicht"]),
        (JobOutcome.WorkedAround, ["partly", "partial", "work", "teilweise"]),
        (JobOutcome.HandedOver, ["handed", "referred", "advice"]),
        (JobOutcome.NothingWrong, ["nothing", "no fault", "misuse"]),
        (JobOutcome.Mended, ["fixed", "repaired", "mended", "success", "solved", "repariert", "réparé", "reparado", "gerepareerd", "riparato", "yes", "ok"]),
    ];

    private const int MostKinds = 150, MostCauses = 500, MostOutcomes = 12;

    /// <returns>The map as a text with remarks, ready to be saved; or why there is none.</returns>
    public static (string? Json, Refusal? Refused) Of(string table)
    {
        try
        {
            return (MapText.Of(Guess(TableSample.Of(table), table), Path.GetFileName(table)), null);
        }
        catch (ImportRefusedException e)
        {
            return (null, e.Refusal);
        }
    }

    private static ColumnMap Guess(TableSample sample, string table)
    {
        var left = sample.Columns.ToList();
        SampleColumn? Take(Func<SampleColumn, bool> fits, params string[] words)
        {
            var found = words.SelectMany(w => left.Where(c => c.Words.Contains(w) && fits(c)).OrderBy(c => c.Words.Length)).FirstOrDefault();
            left.Remove(found!);
            return found;
        }

        var format = DateFormats.MaxBy(f => left.Max(c => Dates(c, f)))!;
        var id = Take(c => !c.HasEmptyCells && c.Different == c.Cells.Length, "id", "nr", "no", "number", "ref", "nummer", "numero", "key", "record");
        var closed = Take(c => Dates(c, format) > 0, "closed", "repaired", "finished", "done", "date", "datum", "fecha", "data", "day", "tag") ?? left.FirstOrDefault(c => Dates(c, format) > 0);
        left.Remove(closed!);
        var outcome = Take(c => c.Different <= MostOutcomes && !c.IsNumbers, "status", "outcome", "result", "state", "ergebnis", "resultado", "resultat", "fixed");
        var cause = Take(c => c.Different <= MostCauses && !c.IsNumbers, "cause", "diagnosis", "ursache", "oorzaak", "causa");
        var kind = Take(c => c.Different <= MostKinds && !c.IsNumbers, "category", "kind", "kategorie", "categorie", "categoria", "class", "type", "art", "product");
        var complaint = Take(c => !c.IsNumbers, "problem", "complaint", "symptom", "symptoms", "fault", "issue", "description", "klage", "fehler", "panne", "problema", "probleem", "defect")
            ?? left.Where(c => c.AverageLength > 12).MaxBy(c => c.AverageLength);
        left.Remove(complaint!);
        var unit = Take(_ => true, "model", "modell", "modele", "modelo", "device", "gerat", "brand", "make", "manufacturer", "marke", "marque", "item");
        var prefix = NoteIds.From(Path.GetFileNameWithoutExtension(table), "table") + "-";
        return new()
        {
            Delimiter = sample.Delimiter,
            Encoding = sample.Encoding,
            DateFormat = format,
            Id = new(prefix, id?.Name),
            Class = kind is { HasEmptyCells: false } ? new(Column: kind.Name) : new("kind-not-said", "Kind not said", kind?.Name),
            Unit = unit?.Name,
            Closed = closed is null ? new(Fixed: TableDate.Write(File.GetLastWriteTimeUtc(table), format)) : new(closed.Name),
            Complaint = complaint?.Name,
            Cause = cause?.Name,
            Grade = cause is null ? Grade.Hearsay : Grade.Told,
            Outcome = new() { Column = outcome?.Name, Values = Values(outcome), Otherwise = JobOutcome.Unsolved },
            NotePrefix = prefix,
        };
    }

    /// <summary>How many cells are dates; none when most are not.</summary>
    private static int Dates(SampleColumn column, string format)
    {
        var dates = column.Said.Count(c => TableDate.Read(c, format) is not null);
        return dates * 10 > column.Said.Length * 8 ? dates : 0;
    }

    private static ImmutableDictionary<string, JobOutcome> Values(SampleColumn? column) =>
        (column?.Said ?? []).Distinct(StringComparer.Ordinal).ToImmutableDictionary(cell => cell, OutcomeOf);

    /// <summary>Longer beginnings first, so that "not repairable" is not read as "no".</summary>
    private static JobOutcome OutcomeOf(string cell) =>
        Outcomes.SelectMany(o => o.Starts.Select(s => (Start: s, o.Outcome))).OrderByDescending(s => s.Start.Length)
            .Where(s => cell.StartsWith(s.Start, StringComparison.OrdinalIgnoreCase)).Select(s => s.Outcome).FirstOrDefault(JobOutcome.Unsolved);
}
