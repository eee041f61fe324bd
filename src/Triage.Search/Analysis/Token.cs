using Lucene.Net.Analysis;
using Lucene.Net.Analysis.TokenAttributes;

namespace Triage.Search.Analysis;

/// <summary>An index term and where it stands in the text.</summary>
/// <param name="Text">Stemmed, lower case.</param>
/// <param name="Position">Counted in words; a whole marking and its first piece share one.</param>
/// <param name="Start">Character in the text.</param>
/// <param name="End">Character after it.</param>
internal readonly record struct Token(string Text, int Position, int Start, int End)
{
    /// <summary>Terms of a text, in the order of their positions.</summary>
    public static List<Token> Of(string text, Analyzer analyzer)
    {
        var terms = new List<Token>();
        using var stream = analyzer.GetTokenStream("", text);
        var term = stream.AddAttribute<ICharTermAttribute>();
        var offset = stream.AddAttribute<IOffsetAttribute>();
        var step = stream.AddAttribute<IPositionIncrementAttribute>();
        stream.Reset();
        var position = -1;
        while (stream.IncrementToken())
        {
            position += step.PositionIncrement;
            terms.Add(new(term.ToString(), position, offset.StartOffset, offset.EndOffset));
        }

        stream.End();
        return terms;
    }
}
