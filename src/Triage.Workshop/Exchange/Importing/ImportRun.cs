using Triage.Notes.Kinds;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Exchange.Importing;

/// <summary>One table being brought in.</summary>
internal sealed class ImportRun(string table, ColumnMap map, string targetFolder, TableReader reader, ExistingNotes existing)
{
    private readonly List<Job> waiting = [];
    private readonly List<(TableRow Row, string Reason)> rejects = [];
    private int rows, jobs, there, folders;

    private string Name => NoteIds.From(Path.GetFileNameWithoutExtension(table), "table");

    private string Imported => Path.Combine(targetFolder, "imported");

    public ImportResult Run(IProgress<ImportProgress>? progress, CancellationToken stop)
    {
        var convert = new JobFromRow(map, reader.Header, existing);
        var staging = Staging.Open(Path.Combine(Imported, $".{Name}.staging"), Import.Fingerprint(table, map, existing));
        try
        {
            foreach (var row in reader.Rows())
            {
                stop.ThrowIfCancellationRequested();
                Take(row, convert.Of(row));
                if (waiting.Count == Staging.FolderSize)
                    Write(staging);
                if (rows % Staging.FolderSize == 0)
                    progress?.Report(new(rows, jobs, rejects.Count));
            }
        }
        catch (ImportRefusedException)
        {
            staging.Clear();
            throw;
        }

        Write(staging);
        var place = Finish(staging, convert);
        progress?.Report(new(rows, jobs, rejects.Count));
        return new()
        {
            Rows = rows,
            Jobs = jobs,
            AlreadyThere = there,
            Rejected = rejects.Count,
            RejectsFile = rejects.Count > 0 ? WrittenRejects() : null,
            Place = place,
            NewNotes = place is null ? [] : Import.New(convert),
            Found = staging.Found,
        };
    }

    private void Take(TableRow row, (Job? Job, string? Reason) read)
    {
        rows++;
        if (read.Job is { } job)
            waiting.Add(job);
        else if (read.Reason is { } reason)
            rejects.Add((row, reason));
        else
            there++;
    }

    private void Write(Staging staging)
    {
        if (waiting.Count == 0)
            return;
        staging.WriteJobs(++folders, waiting);
        jobs += waiting.Count;
        waiting.Clear();
    }

    private string? Finish(Staging staging, JobFromRow convert)
    {
        if (jobs == 0)
        {
            staging.Clear();
            return null;
        }

        staging.WriteKnowledge(convert.NewNotes);
        var place = Path.Combine(Imported, Name);
        for (var n = 2; Path.Exists(place); n++)
            place = Path.Combine(Imported, FormattableString.Invariant($"{Name}-{n}"));
        staging.Finish(place);
        return place;
    }

    private string WrittenRejects()
    {
        var file = Path.Combine(Imported, Name + ".rejects.csv");
        RejectsFile.Write(file, map, reader.Header, rejects);
        return file;
    }
}
