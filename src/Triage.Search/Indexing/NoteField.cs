namespace Triage.Search.Indexing;

/// <summary>A searched field with its weight. Weights are set on the odd half of the judged questions: a name says most about a note, its body least.</summary>
/// <param name="Name">Field name, shown with hits.</param>
/// <param name="Weight">Multiplies the BM25 score of the field.</param>
internal sealed record NoteField(string Name, float Weight, Func<IndexedNote, string> Text)
{
    public static IReadOnlyList<NoteField> All { get; } =
    [
        new("name", 2f, n => Lines(n.Names)),
        new("says", 1.7f, n => Lines(n.Says)),
        new("complaint", 1.6f, n => Lines(n.Complaint)),
        new("cause", 1.4f, n => Lines(n.Causes)),
        new("log", 1.2f, n => Lines(n.Log)),
        new("body", 1f, n => n.Body),
    ];

    private static string Lines(IEnumerable<string> lines) => string.Join('\n', lines.Distinct());
}
