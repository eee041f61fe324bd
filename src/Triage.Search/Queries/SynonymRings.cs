using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Search.Analysis;

namespace Triage.Search.Queries;

/// <summary>Names that mean the same thing, from the notes' other names; looked up in a question, one for the other.</summary>
public sealed class SynonymRings
{
    private readonly Dictionary<string, List<Phrase[]>> byFirstTerm = [];

    private SynonymRings()
    {
    }

    public static SynonymRings None { get; } = new();

    /// <summary>A ring for each note with other names. Jobs have none.</summary>
    public static SynonymRings From(IEnumerable<Note> notes)
    {
        var rings = new SynonymRings();
        using var analyzer = new NoteAnalyzer();
        foreach (var note in notes.Where(n => n is not Job && n.Also.Length > 0))
        {
            rings.Add([note.Name, .. note.Also], analyzer);
        }

        return rings;
    }

    /// <summary>Other ways to say what stands in a question.</summary>
    /// <param name="terms">Terms of the question, one a position.</param>
    internal IEnumerable<ImmutableArray<string>> Others(IReadOnlyList<string> terms)
    {
        for (var i = 0; i < terms.Count; i++)
        {
            foreach (var ring in byFirstTerm.GetValueOrDefault(terms[i], []))
            {
                var here = Array.Find(ring, p => p.StandsAt(terms, i));
                foreach (var other in ring.Where(p => here is not null && p != here))
                {
                    yield return other.Terms;
                }
            }
        }
    }

    private void Add(ImmutableArray<string> names, NoteAnalyzer analyzer)
    {
        var ring = names
            .Select(name => new Phrase([.. Token.Of(name, analyzer).DistinctBy(t => t.Position).Select(t => t.Text)]))
            .Where(p => p.Terms.Length > 0)
            .DistinctBy(p => string.Join(' ', p.Terms))
            .OrderByDescending(p => p.Terms.Length)
            .ToArray();
        foreach (var first in ring.Select(p => p.Terms[0]).Distinct())
        {
            if (!byFirstTerm.TryGetValue(first, out var rings))
            {
                byFirstTerm[first] = rings = [];
            }

            rings.Add(ring);
        }
    }

    private sealed record Phrase(ImmutableArray<string> Terms)
    {
        public bool StandsAt(IReadOnlyList<string> terms, int at) =>
            at + Terms.Length <= terms.Count && !Terms.Where((t, i) => t != terms[at + i]).Any();
    }
}
