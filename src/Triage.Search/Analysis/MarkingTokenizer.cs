using Lucene.Net.Analysis.Util;
using Lucene.Net.Util;

namespace Triage.Search.Analysis;

/// <summary>Breaks at everything that is not a letter, a digit or a sign that markings are written with.</summary>
internal sealed class MarkingTokenizer(LuceneVersion version, TextReader reader) : CharTokenizer(version, reader)
{
    protected override bool IsTokenChar(int c) =>
        c > char.MaxValue ? System.Text.Rune.IsLetterOrDigit(new System.Text.Rune(c)) : IsWordChar((char)c) || "./-+_#'’*".Contains((char)c);

    internal static bool IsWordChar(char c) => char.IsLetterOrDigit(c);
}
