using Triage.Workshop.Readings;

namespace Triage.Workshop.Answers.Wording;

/// <summary>Weights of evidence in words first, numbers one tap behind.</summary>
internal static class CausesInWords
{
    /// <summary>What speaks for the part, what for this fault of it, and the strongest against.</summary>
    /// <param name="part">Name of the part or role.</param>
    /// <param name="forPart">Weights for the part as a whole; empty when this is its only fault.</param>
    public static string Why(IReadOnlyList<WeighedEvidence> weights, string part, IReadOnlyList<WeighedEvidence> forPart)
    {
        var own = For(weights);
        var whole = For(forPart).Where(w => w.Decibans > own.FirstOrDefault(o => o.Words == w.Words)?.Decibans + Strength.Slight || own.All(o => o.Words != w.Words)).ToList();
        var against = weights.Where(w => w.Decibans <= -Strength.Slight).OrderBy(w => w.Decibans).Take(1).ToList();
        var reasons = new[]
        {
            whole.Count == 0 ? null : $"{Strength.Of(whole[0].Decibans)} for the {part}, because {Listed(whole)}",
            own.Count == 0 ? null : $"{Strength.Of(own[0].Decibans)}{(whole.Count == 0 ? "" : " for this fault of it")}, because {Listed(own)}",
            against.Count == 0 ? null : $"{Strength.Of(-against[0].Decibans)} against it: {Listed(against)}",
        }.OfType<string>().ToList();
        return reasons.Count == 0 ? "nothing seen so far speaks for or against it; this is how often it is met" : string.Join("; ", reasons);
    }

    private static List<WeighedEvidence> For(IEnumerable<WeighedEvidence> weights) =>
        [.. weights.Where(w => w.Decibans >= Strength.Slight).OrderByDescending(w => w.Decibans).Take(2)];

    private static string Listed(IEnumerable<WeighedEvidence> weights) => string.Join(" and ", weights.Select(w => Sentence.Lower(w.Words)));
}
