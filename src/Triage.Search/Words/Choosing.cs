namespace Triage.Search.Words;

/// <summary>Which of the phrasings that fit a sentence are taken.</summary>
internal static class Choosing
{
    /// <summary>Best first, as long as its words are free, or say exactly the same of two things ("nothing goes round": capstan and reel).</summary>
    public static List<PhrasingMatch> Best(IEnumerable<PhrasingMatch> matches)
    {
        var chosen = new List<PhrasingMatch>();
        var used = new HashSet<int>();
        foreach (var match in matches
            .OrderByDescending(m => m.Score).ThenBy(m => m.Phrasing.Finding.Classes.IsEmpty).ThenBy(m => m.First)
            .ThenBy(m => m.Phrasing.Finding.Id, StringComparer.Ordinal).ThenBy(m => m.Phrasing.Value))
        {
            if (!match.Own.Any(used.Contains) || chosen.Exists(c => SayTheSame(c, match)))
            {
                chosen.Add(match);
                used.UnionWith(match.All);
            }
        }

        return [.. chosen.OrderBy(m => m.First)];
    }

    private static bool SayTheSame(PhrasingMatch one, PhrasingMatch other) =>
        one.Phrasing.Finding.Id != other.Phrasing.Finding.Id
        && one.At.Length > 1 && one.Denial == other.Denial && one.At.SequenceEqual(other.At)
        && !one.Phrasing.Derived && !other.Phrasing.Derived
        && !one.Phrasing.Finding.Classes.IsEmpty && !other.Phrasing.Finding.Classes.IsEmpty;
}
