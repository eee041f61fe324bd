using Lucene.Net.Analysis;
using Lucene.Net.Analysis.TokenAttributes;

namespace Triage.Search.Analysis;

/// <summary>Keeps the stemmer away from markings: every term that holds a digit.</summary>
internal sealed class DigitKeywordFilter : TokenFilter
{
    private readonly ICharTermAttribute term;
    private readonly IKeywordAttribute keyword;

    public DigitKeywordFilter(TokenStream input)
        : base(input)
    {
        term = AddAttribute<ICharTermAttribute>();
        keyword = AddAttribute<IKeywordAttribute>();
    }

    public override bool IncrementToken()
    {
        if (!m_input.IncrementToken())
        {
            return false;
        }

        if (term.Buffer.AsSpan(0, term.Length).ContainsAnyInRange('0', '9'))
        {
            keyword.IsKeyword = true;
        }

        return true;
    }
}
