using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Notes.Linting;

/// <summary>
/// Whether what the notes know can be used: faults that are reached and told apart, checks for what is likely, buttons that say something,
/// mends that are proven, dangers that are inherited. Only notes of the present format are held to it.
/// </summary>
public static class KnowledgeCheck
{
    /// <summary>The same books with what was found added to their problems.</summary>
    public static ImmutableArray<Book> Check(IReadOnlyList<Book> books)
    {
        var index = new NoteIndex(books.SelectMany(b => b.Notes));
        var classes = index.Notes.OfType<DeviceClass>().Select(c => new ClassKnowledge(c, index)).ToList();
        var found = Remarks(index, classes).Where(r => r.Note.Format == NoteFormat.Current).Distinct().ToLookup(r => r.Note.Place.Book);
        return [.. books.Select(b => b with { Problems = [.. b.Problems.Concat(found[b.Name].Select(r => r.AsProblem)).OrderBy(p => p.Path, StringComparer.Ordinal).ThenBy(p => (p.Line, p.Column))] })];
    }

    private static IEnumerable<Remark> Remarks(NoteIndex index, List<ClassKnowledge> classes) =>
    [
        .. Buttons.Without(index),
        .. Unreached.Of(index, classes),
        .. Unproven.Of(index, classes),
        .. classes.Where(c => c.Class.Format == NoteFormat.Current).SelectMany(OfClass),
    ];

    private static IEnumerable<Remark> OfClass(ClassKnowledge known) =>
    [
        .. new ToldApart(known).Not(),
        .. DirectChecks.Missing(known),
        .. HazardReach.NotInherited(known),
        .. known.Class.NotCovered.Select(what => new Remark(known.Class, null, KnowledgeProblems.NotCovered(what))),
    ];
}
