namespace Triage.Workshop.Answers;

/// <summary>Weights of evidence in words first, numbers one tap behind.</summary>
internal static class CausesInWords
{
    /// <summary>Decibans from which a piece of evidence counts as strong, fair or slight: odds of 10, about 3 and 1.6 (after Good 1950 and Jeffreys 1961, Appendix B).</summary>
    internal const double Strong = 10, Fair = 5, Slight = 2;

    /// <summary>The strongest evidence for, and the strongest against.</summary>
    public static string Why(IReadOnlyList<WeighedEvidence> weights)
    {
        var speaksFor = weights.Where(w => w.Decibans >= Slight).OrderByDescending(w => w.Decibans).Take(2).ToList();
        var against = weights.Where(w => w.Decibans <= -Slight).OrderBy(w => w.Decibans).FirstOrDefault();
        var reasons = speaksFor.Count == 0 ? "" : $"{Grade(speaksFor[0].Decibans)}, because {string.Join(" and ", speaksFor.Select(w => Sentence(w.Words)))}";
        var doubts = against is null ? "" : $"{Grade(-against.Decibans)} against it: {Sentence(against.Words)}";
        return (reasons, doubts) switch
        {
            ("", "") => "nothing seen so far speaks for or against it; this is how often it is met",
            ("", _) => doubts,
            (_, "") => reasons,
            _ => $"{reasons}; {doubts}",
        };
    }

    internal static string Grade(double decibans) => decibans >= Strong ? "strong" : decibans >= Fair ? "fair" : "slight";

    private static string Sentence(string words) => words.Length > 1 && char.IsUpper(words[0]) && char.IsLower(words[1]) ? char.ToLowerInvariant(words[0]) + words[1..] : words;
}
