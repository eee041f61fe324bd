namespace Triage.Search.Words;

/// <summary>
/// Finds the word of a phrasing that a misspelling stands for: one slip from five letters, two from nine, the first letter right;
/// of a word of five letters also that a vowel is missing ("sond").
/// A slip is a letter too many, too few or wrong, or two exchanged.
/// </summary>
internal sealed class Spelling
{
    private const int LetterMissing = 4;
    private const int OneSlip = 5;
    private const int TwoSlips = 9;

    private readonly HashSet<string> known;
    private readonly ILookup<string, string> byShorter;

    public Spelling(IEnumerable<string> words)
    {
        known = [.. words];
        byShorter = known.Where(w => w.Length >= OneSlip - 1)
            .SelectMany(w => Shortened(w, Slips(w.Length + 1)).Select(s => (Short: s, Word: w)))
            .ToLookup(p => p.Short, p => p.Word);
    }

    public string? Correct(string word)
    {
        var slips = Slips(word.Length);
        if (word.Length < LetterMissing || known.Contains(word) || Lexicon.IsEveryday(word) || word.Any(char.IsDigit) || word.Length > 30)
        {
            return null;
        }

        if (slips == 0)
        {
            return byShorter[word].Where(w => w.Length == OneSlip && w[0] == word[0] && LacksVowel(word, w)).Order(StringComparer.Ordinal).FirstOrDefault();
        }

        return Shortened(word, slips)
            .SelectMany(s => byShorter[s])
            .Distinct()
            .Where(w => w[0] == word[0])
            .Select(w => (Word: w, Slips: Distance(word, w)))
            .Where(w => w.Slips <= slips)
            .OrderBy(w => w.Slips).ThenBy(w => w.Word, StringComparer.Ordinal)
            .FirstOrDefault().Word;
    }

    private static bool LacksVowel(string word, string whole) =>
        Enumerable.Range(1, whole.Length - 1).Any(at => "aeiou".Contains(whole[at], StringComparison.Ordinal) && whole.Remove(at, 1) == word);

    private static int Slips(int length) => length >= TwoSlips ? 2 : length >= OneSlip ? 1 : 0;

    /// <summary>The word with up to so many letters left out.</summary>
    private static HashSet<string> Shortened(string word, int letters)
    {
        HashSet<string> all = [word];
        IEnumerable<string> last = [word];
        for (var i = 0; i < letters; i++)
        {
            last = [.. last.SelectMany(w => Enumerable.Range(0, w.Length).Select(at => w.Remove(at, 1)))];
            all.UnionWith(last);
        }

        return all;
    }

    /// <summary>Damerau 1964, "A technique for computer detection and correction of spelling errors", with no letter moved twice.</summary>
    private static int Distance(string a, string b)
    {
        var d = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++)
        {
            for (var j = 0; j <= b.Length; j++)
            {
                d[i, j] = i == 0 || j == 0
                    ? i + j
                    : Math.Min(Math.Min(d[i - 1, j], d[i, j - 1]) + 1, d[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1));
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    d[i, j] = Math.Min(d[i, j], d[i - 2, j - 2] + 1);
                }
            }
        }

        return d[a.Length, b.Length];
    }
}
