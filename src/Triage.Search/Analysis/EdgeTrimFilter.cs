using Lucene.Net.Analysis;
using Lucene.Net.Analysis.TokenAttributes;

namespace Triage.Search.Analysis;

/// <summary>Takes signs off both ends of a word ("plays." → "plays"); words of signs alone are dropped.</summary>
internal sealed class EdgeTrimFilter : TokenFilter
{
    private readonly ICharTermAttribute term;
    private readonly IOffsetAttribute offset;

    public EdgeTrimFilter(TokenStream input)
        : base(input)
    {
        term = AddAttribute<ICharTermAttribute>();
        offset = AddAttribute<IOffsetAttribute>();
    }

    public override bool IncrementToken()
    {
        while (m_input.IncrementToken())
        {
            if (Trim())
            {
                return true;
            }
        }

        return false;
    }

    private bool Trim()
    {
        var text = term.ToString();
        var first = 0;
        var last = text.Length;
        while (first < last && IsSign(text[first]))
        {
            first++;
        }

        while (last > first && IsSign(text[last - 1]))
        {
            last--;
        }

        if (first == last)
        {
            return false;
        }

        if (last - first < text.Length)
        {
            term.SetEmpty().Append(text, first, last - first);
            offset.SetOffset(offset.StartOffset + first, offset.StartOffset + last);
        }

        return true;
    }

    private static bool IsSign(char c) => !char.IsLetterOrDigit(c) && !char.IsSurrogate(c);
}
