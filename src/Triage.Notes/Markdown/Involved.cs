using System.Buffers;

namespace Triage.Notes.Markdown;

/// <summary>
/// Markdown that nobody writes by hand: brackets or quotes dozens deep. A parser takes minutes over it or gives up, so it is kept as plain text.
/// </summary>
internal static class Involved
{
    /// <summary>Deeper than any note, less deep than what costs a parser more than milliseconds.</summary>
    private const int Deepest = 40;

    private static readonly SearchValues<char> Marks = SearchValues.Create("[](){}*_`~>\n");

    /// <summary>The line, from 1, at which it gets too deep; null where it does not.</summary>
    public static int? Line(string markdown)
    {
        int line = 1, square = 0, round = 0, quotes = 0, run = 0;
        var last = '\0';
        for (var i = 0; i < markdown.Length; i++)
        {
            var here = markdown[i];
            if (!Marks.Contains(here))
            {
                last = here == ' ' ? last : here;
                continue;
            }

            run = here == last ? run + 1 : 1;
            switch (here)
            {
                case '[': square++; break;
                case ']': square = Math.Max(0, square - 1); break;
                case '(': round++; break;
                case ')': round = Math.Max(0, round - 1); break;
                case '>': quotes++; break;
                case '\n':
                    (line, quotes) = (line + 1, 0);
                    // a paragraph ends
                    if (last == '\n')
                        (square, round) = (0, 0);
                    break;
            }

            last = here;
            if (square > Deepest || round > Deepest || quotes > Deepest || (run > 10 * Deepest && here is not ('\n' or '>')))
                return line;
        }

        return null;
    }
}
