using System.Collections.Frozen;

namespace Triage.Search.Words;

/// <summary>How much of a thing is meant.</summary>
[Flags]
internal enum Quantity
{
    Unsaid = 0,
    One = 1,
    Some = 2,
    All = 4,

    /// <summary>"Only the left", "only on batteries": and not the rest.</summary>
    Only = 8,
}

/// <summary>"Some keys are dead" is not "the keys are dead", "sound only on the right" is not "sounds right".</summary>
internal static class Quantities
{
    private static readonly FrozenSet<string> One = new[] { "a", "an", "one", "single" }.ToFrozenSet();
    private static readonly FrozenSet<string> Some = new[] { "some", "certain", "few", "several", "couple", "half", "most" }.ToFrozenSet();
    private static readonly FrozenSet<string> All = new[] { "all", "any", "every", "everything", "whole", "entire" }.ToFrozenSet();

    // "some sort of buzz", "all the time" say how, when or how long
    private static readonly FrozenSet<string> OfNothing = new[] { "sort", "kind", "time", "times", "minutes", "days", "day", "right", "over", "more", "longer" }.ToFrozenSet();

    /// <summary>What a phrasing asks for.</summary>
    public static Quantity Asked(List<Word> words) => words.Select((_, i) => At(words, i)).FirstOrDefault(q => q is not Quantity.Unsaid and not Quantity.One, IsOne(words) ? Quantity.One : Quantity.Unsaid);

    /// <summary>All that is said by the words <paramref name="first"/> … <paramref name="last"/>.</summary>
    public static Quantity Said(List<Word> words, int first, int last) =>
        Enumerable.Range(0, words.Count).Where(i => i >= first && i <= last).Aggregate(Quantity.Unsaid, (all, i) => all | At(words, i));

    private static bool IsOne(List<Word> words) =>
        Enumerable.Range(0, words.Count - 1).Any(i => words[i].Text == "one" && (words[i + 1].Role is WordRole.Content || words[i + 1].Text == "of"));

    private static Quantity At(List<Word> words, int i)
    {
        if (i + 1 < words.Count && OfNothing.Contains(words[i + 1].Text))
            return Quantity.Unsaid;
        var text = words[i].Text;
        return Some.Contains(text) ? Quantity.Some
            : All.Contains(text) && (i == 0 || words[i - 1].Text is not ("at" or "after")) ? Quantity.All
            : text == "only" ? Quantity.Only
            : One.Contains(text) ? Quantity.One
            : Quantity.Unsaid;
    }
}
