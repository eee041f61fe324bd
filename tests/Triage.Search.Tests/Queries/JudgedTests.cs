using Triage.Notes;
using Triage.Notes.Kinds;
using Triage.Search.Indexing;
using Triage.Search.Queries;
using Triage.Search.Words;

namespace Triage.Search.Tests.Queries;

/// <summary>
/// How well the ranking answers judged questions over the common and the demo book, beside plain BM25 and beside itself without each part.
/// The odd questions may be tuned on, the even ones are held out. Run with -showLiveOutput for the figures.
/// </summary>
[Trait("run", "long")]
public sealed class JudgedTests(ITestOutputHelper output) : IDisposable
{
    private static readonly string Root = Find(AppContext.BaseDirectory);

    /// <summary>Ids of what stood in the books when the questions were judged. Later notes, which nobody judged, are left out.</summary>
    private static readonly HashSet<string> Pool = [.. File.ReadAllLines(Path.Combine(Root, "tests", "data", "queries-pool.txt"))];

    private static readonly List<Note> Notes =
        [.. new[] { "common", "demo" }.SelectMany(b => BookReader.Read(b, Path.Combine(Root, "kb", b)).Notes).Where(n => Pool.Contains(n.Id))];

    private static readonly List<JudgedQuestion> Questions = [.. JudgedQuestion.Read(Path.Combine(Root, "tests", "data", "queries.md"))];

    private static readonly (string Name, Ranking Ranking)[] Without =
    [
        ("fields", new() { Fields = false }),
        ("synonyms", new() { Synonyms = false }),
        ("markings", new() { Markings = false }),
        ("findings", new() { Findings = false }),
        ("spelling", new() { Spelling = false }),
        ("prior fix", new() { PriorFix = false }),
    ];

    private readonly NoteIndex index = Filled();

    public void Dispose() => index.Dispose();

    [Fact]
    public void Questions_are_at_least_sixty_and_judge_notes_that_exist()
    {
        var ids = Notes.Select(n => n.Id).ToHashSet();
        Assert.True(Questions.Count >= 60);
        Assert.All(Questions, q => Assert.All(q.Grades.Keys, id => Assert.Contains(id, ids)));
        Assert.All(Questions, q => Assert.Contains(3, q.Grades.Values));
    }

    [Theory]
    [Trait("run", "thorough")]
    [InlineData("odd")]
    [InlineData("even")]
    public void Product_is_well_above_plain_bm25_and_no_part_hurts(string half)
    {
        var questions = Questions.Where(q => q.IsOdd == (half == "odd")).ToList();
        List<string> hurts = [];
        using var plain = new PlainBm25(Notes.Select(Words));
        var bare = Report($"{half}, plain BM25", questions, plain.Find);
        var whole = Report($"{half}, product", questions, q => Ids(q, Ranking.Whole));
        foreach (var (name, ranking) in Without)
        {
            var less = Report($"{half}, without {name}", questions, q => Ids(q, ranking));
            // less than a hundredth is chance at this number of questions
            hurts.AddRange(whole < less - 0.01 ? [name] : []);
        }

        Assert.Empty(hurts);
        Assert.True(whole >= bare + 0.05, $"nDCG@10 {whole:0.000}, plain BM25 {bare:0.000}");
    }

    private static NoteIndex Filled()
    {
        var index = NoteIndex.InMemory();
        Shelf.Fill(index, [.. Notes]);
        index.Understands = new(() => Recogniser.Build(Notes.OfType<Finding>()));
        return index;
    }

    private static IndexedNote Words(Note note) => IndexedNote.From(note, ById.GetValueOrDefault);

    private static readonly Dictionary<string, Note> ById = Notes.ToDictionary(n => n.Id);

    private List<string> Ids(string question, Ranking ranking)
    {
        using var searcher = index.OpenSearcher(ranking);
        return [.. searcher.Search(new(question) { Take = 10 }).Hits.Select(h => h.Id)];
    }

    private double Report(string name, List<JudgedQuestion> questions, Func<string, List<string>> find)
    {
        var found = questions.Select(q => (Question: q, Ids: find(q.Text))).ToList();
        var ndcg = found.Average(f => f.Question.Ndcg(f.Ids));
        output.WriteLine(FormattableString.Invariant($"{name,-28} nDCG@10 {ndcg:0.000}  RR {found.Average(f => f.Question.ReciprocalRank(f.Ids)):0.000}"));
        return ndcg;
    }

    private static string Find(string folder) =>
        File.Exists(Path.Combine(folder, "Triage.sln")) ? folder : Find(Path.GetDirectoryName(folder) ?? throw new DirectoryNotFoundException("no Triage.sln above the tests"));
}
