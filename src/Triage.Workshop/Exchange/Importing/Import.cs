using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Triage.Notes.Kinds;
using Triage.Notes.Writing;
using Triage.Workshop.Books;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Exchange.Importing;

/// <summary>Brings a table of past jobs into a book: job notes, and the findings, faults, devices and classes they name.</summary>
public static class Import
{
    private const int NotesShown = 3, RejectsShown = 100;

    /// <summary>What <see cref="Run"/> would do.</summary>
    /// <param name="targetFolder">Book to bring it into; null for a new one.</param>
    /// <param name="open">Notes of all open books: what they name already is not made again.</param>
    public static ImportPreview Preview(string table, ColumnMap map, string? targetFolder = null, Notebook? open = null, CancellationToken stop = default)
    {
        var (rows, jobs, there, rejected) = (0, 0, 0, 0);
        var shown = new List<string>();
        var rejects = new List<RejectedRow>();
        try
        {
            using var reader = Open(table, map);
            var convert = new JobFromRow(map, reader.Header, ExistingNotes.In(targetFolder ?? "", open));
            foreach (var row in reader.Rows())
            {
                stop.ThrowIfCancellationRequested();
                rows++;
                var (job, reason) = convert.Of(row);
                (jobs, there, rejected) = (jobs + (job is null ? 0 : 1), there + (job is null && reason is null ? 1 : 0), rejected + (reason is null ? 0 : 1));
                if (job is not null && shown.Count < NotesShown)
                    shown.Add(NoteWriter.New(job));
                if (reason is not null && rejects.Count < RejectsShown)
                    rejects.Add(new(row.Number, row.Line, reason));
            }

            return new() { Rows = rows, Jobs = jobs, AlreadyThere = there, Rejected = rejected, FirstNotes = [.. shown], NewNotes = jobs == 0 ? [] : New(convert), KnownNotes = [.. convert.KnownNotes.Select(Named)], Columns = ColumnUses.Of(map, reader.Header), Rejects = [.. rejects] };
        }
        catch (Exception e) when (Refusal(e, table, targetFolder) is not null)
        {
            return new() { Rows = rows, Jobs = 0, AlreadyThere = 0, Rejected = rejected, Rejects = [.. rejects], Refused = Refusal(e, table, targetFolder) };
        }
    }

    /// <summary>
    /// All new notes appear at once, in a folder named after the table below <c>imported</c>; or none do. A second run adds nothing.
    /// Stopping keeps what is staged: the next run of the same table goes on from there.
    /// </summary>
    /// <param name="targetFolder">The book's folder, made when it is not there.</param>
    /// <param name="open">Notes of all open books: what they name already is not made again.</param>
    public static ImportResult Run(
        string table, ColumnMap map, string targetFolder, IProgress<ImportProgress>? progress = null, Notebook? open = null, CancellationToken stop = default)
    {
        try
        {
            using var reader = Open(table, map);
            using var alone = FolderLock.Take(Path.Combine(targetFolder, ".bench", "import"), TimeSpan.Zero)
                ?? throw new ImportRefusedException(ImportTexts.BroughtInElsewhere(targetFolder));
            return new ImportRun(table, map, targetFolder, reader, ExistingNotes.In(targetFolder, open)).Run(progress, stop);
        }
        catch (Exception e) when (Refusal(e, table, targetFolder) is not null)
        {
            return new() { Rows = 0, Jobs = 0, AlreadyThere = 0, Rejected = 0, Refused = Refusal(e, table, targetFolder) };
        }
    }

    internal static ImmutableArray<NewNote> New(JobFromRow convert) => [.. convert.NewNotes.Select(Named)];

    /// <summary>What one run depends on.</summary>
    internal static string Fingerprint(string table, ColumnMap map, ExistingNotes existing)
    {
        using var all = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        using (var file = File.OpenRead(table))
            all.AppendData(SHA256.HashData(file));
        all.AppendData(JsonSerializer.SerializeToUtf8Bytes(map));
        foreach (var id in existing.JobIds.Concat(existing.Knowledge.Select(n => n.Id)).Order(StringComparer.Ordinal))
            all.AppendData(Encoding.UTF8.GetBytes(id + "\n"));
        return Convert.ToHexString(all.GetHashAndReset());
    }

    private static NewNote Named(Note note) => new(note.Kind, note.Id, note.Name);

    private static TableReader Open(string table, ColumnMap map)
    {
        TableReader? reader = null;
        try
        {
            reader = TableReader.Open(table, map);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new ImportRefusedException(ImportTexts.CannotRead("table", table, e));
        }

        return reader.Header.IsEmpty ? throw new ImportRefusedException(ImportTexts.NoHeader(table)) : reader;
    }

    private static Refusal? Refusal(Exception e, string table, string? folder) => e switch
    {
        ImportRefusedException refused => refused.Refusal,
        AggregateException { InnerException: { } inner } => Refusal(inner, table, folder),
        IOException or UnauthorizedAccessException => folder is null ? ImportTexts.CannotRead("table", table, e) : ImportTexts.CannotWrite(folder, e),
        _ => null,
    };
}
