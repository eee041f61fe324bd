using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Search.Words;

/// <summary>One way to say one value of a finding.</summary>
/// <param name="Value">Index in the finding's values.</param>
/// <param name="Stems">Content words, in order.</param>
internal sealed record Phrasing(Finding Finding, int Value, ImmutableArray<string> Stems)
{
    /// <summary>How many stems stand before its "no" or "not"; null when it has none.</summary>
    public int? Negation { get; init; }

    /// <summary>Turned round from a denying one: "no sound" → "there is sound". Needs words that say so.</summary>
    public bool NeedsThereIs { get; init; }

    /// <summary>Made from another phrasing, not written in the note.</summary>
    public bool Derived { get; init; }

    /// <summary>Its only word as it is written, when it has just one: "rewinds" is not yet said by "the rewind button".</summary>
    public string? OnlyWord { get; init; }

    /// <summary>"Put new batteries in": it tells of something done, and is looked for in what was tried.</summary>
    public bool IsDeed { get; init; }

    /// <summary>"Some keys", "all bands": how much of it, where it says so.</summary>
    public Quantity Quantity { get; init; }

    /// <summary>Of "the disc is still inside" one word is left that counts: then one of its small words has to stand near it.</summary>
    public ImmutableArray<string> OneOf { get; init; } = [];

    /// <summary>"On" of "comes on", "off" of "goes off by itself".</summary>
    public ImmutableArray<string> Particles { get; init; } = [];

    /// <summary>Its only telling words are a name of the machine: "nothing from the speaker" is not yet said by "the speaker does not work".</summary>
    public bool OfMachine { get; init; }

    /// <summary>It has an "and" or "or" itself.</summary>
    public bool SpansBreak { get; init; }

    /// <summary>What a note's phrasing means, with what follows from it: the opposite of one that denies.</summary>
    public static IEnumerable<Phrasing> Of(Finding finding, int value, string says)
    {
        var words = WordReader.Sentences(says, _ => null).SelectMany(s => s).ToList();
        var heavy = words.Count(w => w.Role is WordRole.Content);
        var told = words.Where((w, i) => w.Role is WordRole.Content || (w.Text == "on" && i == words.Count - 1)).ToList();
        if (told.Count < 2)
        {
            told = words.FindAll(w => w.Role is WordRole.Content or WordRole.Light);
        }

        if (told.Count == 0)
        {
            yield break;
        }

        var first = words.FindIndex(w => w.IsNegation);
        var plain = new Phrasing(finding, value, [.. told.Select(w => w.Stem)]) 
        {
            SpansBreak = words.Any(w => w.IsBreak),
            OneOf = told.Count == 1 ? [.. words.Where(w => Lexicon.SaysWhere(w.Text)).Select(w => w.Text)] : [],
            Particles = [.. words.Where(w => HeadWords.IsParticle(w.Text)).Select(w => w.Text)],
            IsDeed = !TriedFixes.In(says).Tried.IsEmpty,
            Quantity = Quantities.Asked(words),
            OnlyWord = told.Count == 1 ? told[0].Text : null,
        };
        if (first < 0)
        {
            yield return plain;
            yield break;
        }

        yield return plain with { Negation = told.Count(w => w.Span.Start < words[first].Span.Start) };
        if (value > 0 && !finding.Nominal && (heavy <= 2 || words[first].Role is WordRole.Not))
        {
            var needs = words[first].Role is WordRole.No || heavy < 2;
            yield return plain with { Value = 0, Derived = true, NeedsThereIs = needs };
        }
    }
}
