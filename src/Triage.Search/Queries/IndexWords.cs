using System.Collections.Immutable;
using Lucene.Net.Index;
using Lucene.Net.Search;
using Lucene.Net.Util;
using Triage.Search.Indexing;

namespace Triage.Search.Queries;

/// <summary>The words of all notes as they are written, lower case and without stems.</summary>
internal sealed class IndexWords(IndexReader reader)
{
    private const int MostRead = 2_000;
    private const int ShortestToCorrect = 4;
    private const int TwoSlips = 7;

    private readonly Terms? terms = MultiFields.GetTerms(reader, NoteDocument.Word);

    /// <summary>The commonest words that go on from a beginning, longer than it.</summary>
    public ImmutableArray<string> Completions(string beginning, int most)
    {
        var found = new List<(string Word, int Notes)>();
        var words = terms?.GetEnumerator();
        if (words is null || words.SeekCeil(new BytesRef(beginning)) == TermsEnum.SeekStatus.END)
        {
            return [];
        }

        do
        {
            var word = words.Term.Utf8ToString();
            if (!word.StartsWith(beginning, StringComparison.Ordinal))
            {
                break;
            }

            if (word.Length > beginning.Length)
            {
                found.Add((word, words.DocFreq));
            }
        }
        while (found.Count < MostRead && words.MoveNext());
        return [.. found.OrderByDescending(f => f.Notes).ThenBy(f => f.Word, StringComparer.Ordinal).Take(most).Select(f => f.Word)];
    }

    /// <summary>The word that a misspelling most likely stands for: fewest slips, then in most notes. Null when the word is known or nothing is near.</summary>
    public string? Correction(string word)
    {
        if (terms is null || word.Length < ShortestToCorrect || !word.All(char.IsAsciiLetterLower) || IsKnown(word))
        {
            return null;
        }

        var near = new FuzzyTermsEnum(terms, new AttributeSource(), new Term(NoteDocument.Word, word), word.Length >= TwoSlips ? 2 : 1, 1, transpositions: true);
        var likeness = near.Attributes.AddAttribute<IBoostAttribute>();
        (string? Word, float Likeness, int Notes) best = default;
        while (near.MoveNext())
        {
            if ((likeness.Boost, near.DocFreq).CompareTo((best.Likeness, best.Notes)) > 0)
            {
                best = (near.Term.Utf8ToString(), likeness.Boost, near.DocFreq);
            }
        }

        return best.Word;
    }

    private bool IsKnown(string word) => reader.DocFreq(new Term(NoteDocument.Word, word)) > 0;
}
