using System.Text.RegularExpressions;
using Triage.Notes;
using Triage.Notes.Kinds;

namespace Triage.Cli.Tests;

/// <summary>Gives every note of a bench another id, everywhere it is named.</summary>
internal static class RenamedIds
{
    public const string Suffix = "-x";

    public static void Apply(TestBench bench)
    {
        var books = BookReader.ReadAll(bench.Books.Select(b => (b, bench.Folder(b))));
        var ids = books.SelectMany(b => b.Notes).Select(n => n.Id).ToHashSet();
        foreach (var note in books.SelectMany(b => b.Notes))
            Rename(bench.File(note.Place.Book, note.Place.Path), note, ids);
    }

    private static void Rename(string file, Note note, HashSet<string> ids)
    {
        var lines = File.ReadAllLines(file);
        foreach (var reference in note.References.Where(r => NamesANote(r, ids)).OrderByDescending(r => r.Column))
        {
            var line = lines[reference.Line - 1];
            var at = line.IndexOf(reference.Id, reference.Column - 1, StringComparison.Ordinal);
            lines[reference.Line - 1] = line.Insert(at + reference.Id.Length, Suffix);
        }

        var own = Array.FindIndex(lines, l => Regex.IsMatch(l, $"^id: \"?{Regex.Escape(note.Id)}\"?\\s*$"));
        lines[own] = $"id: {note.Id}{Suffix}";
        File.WriteAllLines(file, lines);
    }

    /// <summary>Fixes, roles, values, outcomes and access steps are names within notes.</summary>
    private static bool NamesANote(Reference reference, HashSet<string> ids) => ids.Contains(reference.Id) && reference.Kind
        is not (ReferenceKind.Fix or ReferenceKind.Role or ReferenceKind.Mode or ReferenceKind.Value or ReferenceKind.Outcome or ReferenceKind.Access);
}
