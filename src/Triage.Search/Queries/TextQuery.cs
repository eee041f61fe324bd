using System.Text.RegularExpressions;
using Lucene.Net.Index;
using Lucene.Net.Search;
using Triage.Search.Analysis;
using Triage.Search.Indexing;


namespace Triage.Search.Queries;

/// <summary>What was typed, as a Lucene query over the weighted fields.</summary>
/// <param name="Query">Null when there is no word in it.</param>
/// <param name="Notice">What was left out; null when nothing was.</param>
internal sealed partial record TextQuery(Query? Query, string? Notice)
{
    private const int LongestText = 4_000;
    private const int MostWords = 64;

    // a whole marking counts well above its pieces, a synonym well below the word itself; set by hand
    private const float WholeMarking = 3f;
    private const float Pieces = 0.1f;
    private const float WholeName = 8f;
    private const float Synonym = 0.4f;

    // a word that matches in several fields counts a little more than in its best one
    private const float OtherFields = 0.1f;

    public static TextQuery From(string typed, NoteAnalyzer analyzer, SynonymRings synonyms)
    {
        var text = typed.Length > LongestText ? typed[..LongestText] : typed;
        var notice = text.Length < typed.Length ? SearchTexts.QueryCut(text.Length, typed.Length) : null;
        var query = new BooleanQuery();
        foreach (Match quoted in Quoted().Matches(text))
        {
            if (Phrase(Token.Of(quoted.Groups[1].Value, analyzer)) is { } phrase)
            {
                query.Add(phrase, Occur.MUST);
            }
        }

        var terms = Token.Of(Quoted().Replace(text, " "), analyzer);
        var words = Grouped(terms).DistinctBy(g => g[0].Text).ToList();
        if (words.Count > MostWords)
        {
            notice ??= SearchTexts.WordsCut(MostWords);
            words = words[..MostWords];
        }

        AddWords(query, words);
        if (words.Count > 0)
        {
            query.Add(new TermQuery(new(NoteDocument.WholeName, NoteDocument.Bare(text))) { Boost = WholeName }, Occur.SHOULD);
            AddSynonyms(query, [.. Grouped(terms).Select(g => g[0].Text)], synonyms);
        }

        return new(query.Clauses.Count == 0 ? null : query, notice);
    }

    private static void AddWords(BooleanQuery query, List<List<Token>> words)
    {
        if (words.Count == 0)
        {
            return;
        }

        var any = new WordsQuery([.. words.Select(word => InFields(field => OneWord(field, word)))], OtherFields, words.Count <= 2 ? 1 : (words.Count + 1) / 2);
        query.Add(any, query.Clauses.Count == 0 ? Occur.SHOULD : Occur.MUST);
    }

    private static void AddSynonyms(BooleanQuery query, IReadOnlyList<string> terms, SynonymRings synonyms)
    {
        foreach (var other in synonyms.Others(terms).DistinctBy(o => string.Join(' ', o)).Take(MostWords))
        {
            var said = InAnyField(field => InOrder(field, other.Select((t, i) => (t, i))));
            said.Boost = Synonym;
            query.Add(said, Occur.SHOULD);
        }
    }

    /// <summary>A plain word; or a marking, whole or with its pieces side by side.</summary>
    private static Query OneWord(string field, List<Token> word)
    {
        var whole = word.Where(w => IsWhole(w, word)).ToList();
        var pieces = word.Where(w => !IsWhole(w, word)).ToList();
        if (pieces.Count == 0 && whole.Count == 1)
        {
            return new TermQuery(new(field, whole[0].Text));
        }

        var best = new DisjunctionMaxQuery(0);
        foreach (var form in whole)
        {
            best.Add(new TermQuery(new(field, form.Text)) { Boost = WholeMarking });
        }

        if (pieces.Count > 0)
        {
            var apart = InOrder(field, pieces.Select(p => (p.Text, p.Position - pieces[0].Position)));
            apart.Boost = Pieces;
            best.Add(apart);
        }

        return best;
    }

    private static DisjunctionMaxQuery? Phrase(List<Token> terms)
    {
        var wholes = Grouped(terms).Select(g => g[0]).ToList();
        return wholes.Count == 0 ? null : InAnyField(field => InOrder(field, wholes.Select(w => (w.Text, w.Position - wholes[0].Position))));
    }

    private static Query InOrder(string field, IEnumerable<(string Text, int Position)> terms)
    {
        var phrase = new PhraseQuery();
        foreach (var (text, position) in terms)
        {
            phrase.Add(new Term(field, text), position);
        }

        return phrase;
    }

    private static DisjunctionMaxQuery InAnyField(Func<string, Query> inField) => new([.. InFields(inField)], OtherFields);

    private static Query[] InFields(Func<string, Query> inField) =>
    [
        .. NoteField.All.Select(field =>
        {
            var query = inField(field.Name);
            query.Boost *= field.Weight;
            return query;
        }),
    ];

    /// <summary>Terms by the written word they came from, the whole word first.</summary>
    private static IEnumerable<List<Token>> Grouped(List<Token> terms)
    {
        List<Token> group = [];
        foreach (var term in terms)
        {
            if (group.Count > 0 && term.Start >= group.Max(t => t.End))
            {
                yield return group;
                group = [];
            }

            group.Add(term);
        }

        if (group.Count > 0)
        {
            yield return group;
        }
    }

    private static bool IsWhole(Token word, List<Token> group) =>
        word.Start == group.Min(w => w.Start) && word.End == group.Max(w => w.End);

    [GeneratedRegex("[\"“”„]([^\"“”„]*)[\"“”„]")]
    private static partial Regex Quoted();
}
