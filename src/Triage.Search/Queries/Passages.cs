using System.Collections.Immutable;
using Lucene.Net.Documents;
using Lucene.Net.Search;
using Triage.Search.Analysis;
using Triage.Search.Indexing;
using Lucene.Net.Index;

namespace Triage.Search.Queries;

/// <summary>Cuts the pieces of a note's text in which the words of a question stand.</summary>
internal sealed class Passages
{
    private const int LongestPassage = 240;
    private const int MostPassages = 3;
    private const int LongestRead = 50_000;

    private readonly NoteAnalyzer analyzer;
    private readonly ILookup<string, string> wanted;

    public Passages(NoteAnalyzer analyzer, IndexSearcher searcher, Query query)
    {
        this.analyzer = analyzer;
        var terms = new HashSet<Term>();
        searcher.Rewrite(query).ExtractTerms(terms);
        wanted = terms.ToLookup(t => t.Field, t => t.Text);
    }

    public (ImmutableArray<Passage> Pieces, ImmutableArray<MatchedField> Matched) Of(Document document)
    {
        var pieces = ImmutableArray.CreateBuilder<Passage>();
        var matched = ImmutableArray.CreateBuilder<MatchedField>();
        foreach (var field in NoteField.All)
        {
            if (document.Get(field.Name) is { } text && Marks(field.Name, text) is { Count: > 0 } marks)
            {
                pieces.Add(Cut(field.Name, text, marks));
                matched.Add(new(field.Name, [.. marks.Select(m => m.Of(text)).Distinct(StringComparer.OrdinalIgnoreCase)]));
            }
        }

        string[] shown = [.. document.GetValues(NoteDocument.Finding).Intersect(wanted[NoteDocument.Finding])];
        if (shown.Length > 0)
        {
            matched.Add(new(NoteDocument.Finding, [.. shown]));
        }

        if (shown.Length > 0 && pieces.Count == 0)
        {
            var text = string.Join(", ", shown);
            pieces.Add(new(NoteDocument.Finding, text, [new(0, text.Length)]));
        }

        return ([.. pieces.OrderByDescending(p => p.Marks.Length).Take(MostPassages)], matched.ToImmutable());
    }

    private List<TextSpan> Marks(string field, string text)
    {
        var marks = new List<TextSpan>();
        var terms = wanted[field].ToHashSet();
        if (terms.Count == 0)
        {
            return marks;
        }

        foreach (var term in Token.Of(text.Length > LongestRead ? text[..LongestRead] : text, analyzer).Where(t => terms.Contains(t.Text)))
        {
            if (marks.Count > 0 && term.Start < marks[^1].End)
            {
                marks[^1] = marks[^1] with { Length = Math.Max(marks[^1].End, term.End) - marks[^1].Start };
            }
            else
            {
                marks.Add(new(term.Start, term.End - term.Start));
            }
        }

        return marks;
    }

    /// <summary>The stretch with most marks, on whole lines where they are short.</summary>
    private static Passage Cut(string field, string text, List<TextSpan> marks)
    {
        var first = marks.MaxBy(m => marks.Count(n => n.Start >= m.Start && n.End <= m.Start + LongestPassage));
        var start = Back(text, first.Start);
        var end = Forward(text, start, first.End);
        var inside = marks.Where(m => m.Start >= start && m.End <= end).Select(m => m with { Start = m.Start - start });
        return new(field, text[start..end], [.. inside]);
    }

    private static int Back(string text, int from)
    {
        var earliest = Math.Max(0, from - (LongestPassage / 4));
        var line = text.LastIndexOf('\n', Math.Max(0, from - 1), Math.Max(0, from - earliest));
        if (line >= 0 || earliest == 0)
        {
            return line + 1 > from ? from : line + 1;
        }

        var space = text.IndexOf(' ', earliest, from - earliest);
        return space < 0 ? from : space + 1;
    }

    private static int Forward(string text, int start, int least)
    {
        var latest = Math.Min(text.Length, Math.Max(least, start + LongestPassage));
        if (latest == text.Length)
        {
            return latest;
        }

        var space = text.LastIndexOf(' ', latest, latest - least);
        return space < least ? latest : space;
    }
}
