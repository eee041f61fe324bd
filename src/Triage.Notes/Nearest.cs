namespace Triage.Notes;

/// <summary>The word that somebody probably meant.</summary>
public static class Nearest
{
    /// <summary>
    /// The candidate with the fewest single-character slips (restricted Damerau–Levenshtein distance; Damerau 1964),
    /// at most one for each three letters; null when none is that near. Ties go to the first in ordinal order.
    /// </summary>
    public static string? To(string word, IEnumerable<string> candidates)
    {
        var allowed = Math.Max(1, word.Length / 3);
        var best = candidates
            .Where(c => c != word && Math.Abs(c.Length - word.Length) <= allowed)
            .Select(c => (Word: c, Slips: Slips(word, c)))
            .Where(c => c.Slips <= allowed)
            .OrderBy(c => c.Slips).ThenBy(c => c.Word, StringComparer.Ordinal)
            .FirstOrDefault();
        return best.Word;
    }

    private static int Slips(string a, string b)
    {
        var d = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++)
        {
            d[i, 0] = i;
        }

        for (var j = 0; j <= b.Length; j++)
        {
            d[0, j] = j;
        }

        for (var i = 1; i <= a.Length; i++)
        {
            for (var j = 1; j <= b.Length; j++)
            {
                var change = d[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                d[i, j] = Math.Min(change, Math.Min(d[i - 1, j], d[i, j - 1]) + 1);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    d[i, j] = Math.Min(d[i, j], d[i - 2, j - 2] + 1);
                }
            }
        }

        return d[a.Length, b.Length];
    }
}
