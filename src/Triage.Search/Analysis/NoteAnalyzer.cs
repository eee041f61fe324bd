using Lucene.Net.Analysis;
using Lucene.Net.Analysis.Core;
using Lucene.Net.Analysis.En;
using Lucene.Net.Analysis.Miscellaneous;
using Lucene.Net.Analysis.Util;
using Lucene.Net.Util;

namespace Triage.Search.Analysis;

/// <summary>
/// Turns text into index terms: lower case, ASCII, English stems. A marking is kept whole and split: "HD-44" gives hd-44, hd44, hd, 44.
/// "no", "not", "on" and "off" stay; words with digits are not stemmed.
/// </summary>
public sealed class NoteAnalyzer() : Analyzer(PER_FIELD_REUSE_STRATEGY)
{
    /// <summary>Raised with every change that gives other terms for the same text; an index of another version is rebuilt.</summary>
    public const int Version = 2;

    /// <summary>Field whose words are kept as they are written, neither split nor stemmed.</summary>
    internal const string WholeWords = "word";

    internal const LuceneVersion Lucene = LuceneVersion.LUCENE_48;

    private const WordDelimiterFlags Split =
        WordDelimiterFlags.GENERATE_WORD_PARTS | WordDelimiterFlags.GENERATE_NUMBER_PARTS | WordDelimiterFlags.SPLIT_ON_NUMERICS
        | WordDelimiterFlags.PRESERVE_ORIGINAL | WordDelimiterFlags.CATENATE_ALL | WordDelimiterFlags.STEM_ENGLISH_POSSESSIVE;

    private static readonly CharArraySet Stops = new(
        Lucene,
        ["a", "an", "and", "are", "as", "at", "be", "been", "by", "for", "from", "has", "have", "i", "in", "is", "it", "its", "of", "or", "s", "t",
         "that", "the", "their", "them", "then", "there", "these", "they", "this", "to", "was", "were", "will", "with"],
        ignoreCase: false);

    /// <summary>A phrase never reaches from one field's text into the next where they are searched as one.</summary>
    public override int GetPositionIncrementGap(string fieldName) => 100;

    protected override TokenStreamComponents CreateComponents(string fieldName, TextReader reader)
    {
        var words = new MarkingTokenizer(Lucene, reader);
        TokenStream stream = new EdgeTrimFilter(words);
        if (fieldName == WholeWords)
        {
            return new TokenStreamComponents(words, new ASCIIFoldingFilter(new LowerCaseFilter(Lucene, stream)));
        }

        stream = new WordDelimiterFilter(Lucene, stream, Split, null);
        stream = new LowerCaseFilter(Lucene, stream);
        stream = new ASCIIFoldingFilter(stream);
        stream = new StopFilter(Lucene, stream, Stops);
        stream = new DigitKeywordFilter(stream);
        stream = new PorterStemFilter(stream);
        return new TokenStreamComponents(words, new RemoveDuplicatesTokenFilter(stream));
    }
}
