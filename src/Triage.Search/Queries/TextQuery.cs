using System.Text.RegularExpressions;
using Lucene.Net.Index;
using Lucene.Net.Search;
using Triage.Search.Analysis;
using Triage.Search.Indexing;

namespace Triage.Search.Queries;

/// <summary>What was typed, as a Lucene query over the weighted fields.</summary>
/// <param name="Query">Null when there is no word in it.</param>
/// <param name="Notice">What was left out; null when nothing was.</param>
/// <param name="DidYouMean">With misspelt words put right; null when there are none.</param>
internal sealed partial record TextQuery(Query? Query, string? Notice, string? DidYouMean)
{
    private const int LongestText = 4_000;
    private const int MostWords = 64;

    // set on the odd half of tests/data/queries.md: a whole marking counts above its pieces, a synonym a little below the word itself
    private const float WholeMarking = 2f;
    private const float Pieces = 0.1f;
    private const float WholeName = 8f;
    private const float Synonym = 0.15f;
    private const float SameFinding = 3f;
    private const float OtherFields = 0.5f;
    private const float Everywhere = 3f;
    private const int WordsForOneNeeded = 3;

    public static TextQuery From(SearchQuery asked, Asking asking)
    {
        var (typed, analyzer) = (asked.Text, asking.Analyzer);
        var text = typed.Length > LongestText ? typed[..LongestText] : typed;
        var notice = text.Length < typed.Length ? SearchTexts.QueryCut(text.Length, typed.Length) : null;
        var query = new BooleanQuery(disableCoord: true);
        foreach (Match quoted in Quoted().Matches(text))
        {
            if (Phrase(Token.Of(quoted.Groups[1].Value, analyzer), asking.Parts) is { } phrase)
            {
                query.Add(phrase, Occur.MUST);
            }
        }

        var terms = Token.Of(Quoted().Replace(text, q => new(' ', q.Length)), analyzer);
        var words = Grouped(terms).DistinctBy(g => g[0].Text).ToList();
        if (words.Count > MostWords)
        {
            notice ??= SearchTexts.WordsCut(MostWords);
            words = words[..MostWords];
        }

        AddWords(query, words, OtherWords.Of(words, text, asked.Unfinished, asking), asking.Parts);
        if (words.Count > 0)
        {
            query.Add(new TermQuery(new(NoteDocument.WholeName, NoteDocument.Bare(text))) { Boost = WholeName }, Occur.SHOULD);
            AddSynonyms(query, [.. Grouped(terms).Select(g => g[0].Text)], asking);
            AddFindings(query, text, asking);
        }

        return new(query.Clauses.Count == 0 ? null : query, notice, OtherWords.PutRight(words, text, asking));
    }

    private static void AddWords(BooleanQuery query, List<List<Token>> words, IEnumerable<OtherWords> meant, Ranking parts)
    {
        if (words.Count == 0)
        {
            return;
        }

        Query[][] inFields = [.. words.Zip(meant, (word, other) => InFields(field => Either(field, word, other, parts), parts))];
        Query[] everywhere = [.. words.Zip(meant, (word, other) => Boosted(Either(NoteDocument.Every, word, other, parts), Everywhere))];
        var any = new WordsQuery(inFields, everywhere, OtherFields, Math.Max(1, words.Count / WordsForOneNeeded));
        query.Add(any, query.Clauses.Count == 0 ? Occur.SHOULD : Occur.MUST);
    }

    private static void AddSynonyms(BooleanQuery query, IReadOnlyList<string> terms, Asking asking)
    {
        foreach (var other in (asking.Parts.Synonyms ? asking.Synonyms : SynonymRings.None).Others(terms).DistinctBy(o => string.Join(' ', o)).Take(MostWords))
        {
            var said = InAnyField(field => InOrder(field, other.Select((t, i) => (t, i))), asking.Parts);
            said.Boost = Synonym;
            query.Add(said, Occur.SHOULD);
        }
    }

    private static void AddFindings(BooleanQuery query, string text, Asking asking)
    {
        foreach (var found in asking.Recogniser?.Recognise(text).Findings ?? [])
        {
            query.Add(new TermQuery(new(NoteDocument.Finding, $"{found.Finding}={found.Value}")) { Boost = SameFinding }, Occur.SHOULD);
        }
    }

    private static Query Either(string field, List<Token> word, OtherWords other, Ranking parts)
    {
        var asTyped = OneWord(field, word, parts);
        if (other.Words.IsEmpty)
        {
            return asTyped;
        }

        var best = new DisjunctionMaxQuery(0) { asTyped };
        foreach (var meant in other.Words)
        {
            var instead = OneWord(field, meant, parts);
            instead.Boost *= other.Weight;
            best.Add(instead);
        }

        return best;
    }

    /// <summary>A plain word; or a marking, whole or with its pieces side by side.</summary>
    private static Query OneWord(string field, List<Token> word, Ranking parts)
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
            best.Add(new TermQuery(new(field, form.Text)) { Boost = parts.Markings ? WholeMarking : 1 });
        }

        if (pieces.Count > 0)
        {
            var apart = InOrder(field, pieces.Select(p => (p.Text, p.Position - pieces[0].Position)));
            apart.Boost = parts.Markings ? Pieces : 1;
            best.Add(apart);
        }

        return best;
    }

    private static Query? Phrase(List<Token> terms, Ranking parts)
    {
        var wholes = Grouped(terms).Select(g => g[0]).ToList();
        return wholes.Count == 0 ? null : InAnyField(field => InOrder(field, wholes.Select(w => (w.Text, w.Position - wholes[0].Position))), parts);
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

    private static BooleanQuery InAnyField(Func<string, Query> inField, Ranking parts) => new(disableCoord: true)
    {
        { new DisjunctionMaxQuery([.. InFields(inField, parts)], OtherFields), Occur.SHOULD },
        { Boosted(inField(NoteDocument.Every), Everywhere), Occur.SHOULD },
    };

    private static Query[] InFields(Func<string, Query> inField, Ranking parts) =>
        [.. NoteField.All.Select(field => Boosted(inField(field.Name), parts.Fields ? field.Weight : 1))];

    private static Query Boosted(Query query, float by)
    {
        query.Boost *= by;
        return query;
    }

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
