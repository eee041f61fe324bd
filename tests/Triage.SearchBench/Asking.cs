using Triage.Notes.Kinds;
using Triage.Search;
using Triage.Search.Indexing;

namespace Triage.SearchBench;

/// <summary>How long questions and saves take on a full shelf.</summary>
/// <param name="BySort">Sort of question, how many of them, the product, SQLite.</param>
internal sealed record Asking(Timed Product, Timed Sqlite, (string Sort, int Count, Timed Product, Timed Sqlite)[] BySort, Timed Saves)
{
    private const int Rounds = 3;

    public required int SavedNotFound { get; init; }

    public required int WithoutHits { get; init; }

    public required string SqliteVersion { get; init; }

    public static Asking Of(Note[] notes, IndexedNote[] words, Question[] questions, Func<string, Note?> find)
    {
        using var index = NoteIndex.InMemory();
        Shelf.Fill(index, notes, find);
        using var sqlite = new SqliteFts();
        sqlite.Fill(words);
        using var searcher = index.OpenSearcher();
        var product = Timed.Each(questions, Rounds, q => searcher.Search(q.ForProduct));
        var beside = Timed.Each(questions, Rounds, q => sqlite.Search(q));
        var bySort = questions.Index().GroupBy(q => q.Item.Sort, q => q.Index).Select(g => (g.Key, g.Count(), product.Only(g), beside.Only(g))).ToArray();
        var withoutHits = questions.Count(q => searcher.Search(q.ForProduct).Total == 0);
        var (saves, lost) = Saving(index, notes, find);
        return new(product, beside, bySort, saves) { SavedNotFound = lost, WithoutHits = withoutHits, SqliteVersion = sqlite.Version };
    }

    private static (Timed Saves, int Lost) Saving(NoteIndex index, Note[] notes, Func<string, Note?> find)
    {
        var jobs = notes.OfType<Job>().ToArray();
        var (saved, lost) = (0, 0);
        Job[] changed = [.. Enumerable.Range(0, 100).Select(i => jobs[i * 7919 % jobs.Length])];
        var timed = Timed.Each(changed, 3, job => lost += Shelf.SaveAndFind(index, job, $"once{++saved}", find) ? 0 : 1);
        return (timed, lost);
    }
}
