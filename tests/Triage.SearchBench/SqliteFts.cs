using Microsoft.Data.Sqlite;
using Triage.Search.Indexing;

namespace Triage.SearchBench;

/// <summary>The same texts in SQLite's full-text table (FTS5, BM25 with the product's field weights, Porter stems), in memory.</summary>
internal sealed class SqliteFts : IDisposable
{
    private readonly SqliteConnection connection = new("Data Source=:memory:");

    public SqliteFts()
    {
        connection.Open();
        Run("CREATE TABLE note (id TEXT PRIMARY KEY, kind TEXT, title TEXT, outcome TEXT, fix TEXT, date TEXT)");
        Run("CREATE TABLE device (note INTEGER, device TEXT, PRIMARY KEY (device, note)) WITHOUT ROWID");
        Run("CREATE VIRTUAL TABLE words USING fts5(name, says, complaint, cause, log, body, tokenize = 'porter unicode61 remove_diacritics 2')");
        Run("INSERT INTO words (words, rank) VALUES ('rank', 'bm25(4, 3, 2.5, 2, 1.5, 1)')");
    }

    public string Version => connection.ServerVersion;

    public double Megabytes => Convert.ToInt64(Scalar("PRAGMA page_count")) * (double)Convert.ToInt64(Scalar("PRAGMA page_size")) / 1e6;

    public void Fill(IReadOnlyList<IndexedNote> notes)
    {
        using var transaction = connection.BeginTransaction();
        using var note = Prepared("INSERT INTO note (rowid, id, kind, title, outcome, fix, date) VALUES ($0, $1, $2, $3, $4, $5, $6)", 7);
        using var words = Prepared("INSERT INTO words (rowid, name, says, complaint, cause, log, body) VALUES ($0, $1, $2, $3, $4, $5, $6)", 7);
        using var device = Prepared("INSERT OR IGNORE INTO device (note, device) VALUES ($0, $1)", 2);
        for (var i = 0; i < notes.Count; i++)
        {
            Put(note, [i, notes[i].Id, notes[i].Kind, notes[i].Title, notes[i].Outcome, notes[i].Fix, notes[i].Date?.ToString("O")]);
            Put(words, [i, .. RawLucene.Texts(notes[i]).Select(t => t.Text)]);
            foreach (var id in notes[i].DeviceIds)
                Put(device, [i, id]);
        }

        transaction.Commit();
    }

    /// <summary>
    /// Top ten with the pieces of text that match; neither counts by filter nor the total, which the product gives as well. Sorting by rank leaves
    /// the pieces to the ten that are shown, and the plus sign keeps the filter from asking the text once for each note it lets through.
    /// </summary>
    public int Search(Question question)
    {
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT note.id, note.title, note.outcome, snippet(words, -1, '[', ']', '…', 40)"
            + " FROM words JOIN note ON note.rowid = words.rowid WHERE words MATCH $match"
            + (question.Kind is null ? "" : " AND note.kind = $kind")
            + (question.Outcome is null ? "" : " AND note.outcome = $outcome")
            + (question.Device is null ? "" : " AND +words.rowid IN (SELECT note FROM device WHERE device = $device)")
            + " ORDER BY words.rank LIMIT 10";
        command.Parameters.AddWithValue("$match", question.Match);
        command.Parameters.AddWithValue("$kind", question.Kind ?? "");
        command.Parameters.AddWithValue("$outcome", question.Outcome ?? "");
        command.Parameters.AddWithValue("$device", question.Device ?? "");
        using var rows = command.ExecuteReader();
        var found = 0;
        while (rows.Read())
            found += rows.GetString(3).Length > 0 ? 1 : 0;
        return found;
    }

    public void Dispose() => connection.Dispose();

    private SqliteCommand Prepared(string sql, int parameters)
    {
        var command = connection.CreateCommand();
        command.CommandText = sql;
        for (var i = 0; i < parameters; i++)
            command.Parameters.Add(new SqliteParameter { ParameterName = $"${i}" });
        return command;
    }

    private static void Put(SqliteCommand command, object?[] values)
    {
        for (var i = 0; i < values.Length; i++)
            command.Parameters[i].Value = values[i] ?? DBNull.Value;
        command.ExecuteNonQuery();
    }

    private void Run(string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    private object? Scalar(string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return command.ExecuteScalar();
    }
}
