using System.Collections.Frozen;
using System.Collections.Immutable;

namespace Triage.Search.Words;

/// <summary>
/// The word behind may change what is spoken of: "the volume switch does not work" says nothing of the volume, "it won't turn off" nothing of what turns,
/// "one of the speakers is dead" nothing of both.
/// </summary>
internal static class HeadWords
{
    private static readonly FrozenSet<string> Parts =
        "switch switches button buttons knob knobs lead leads cable cables plug plugs jack jacks socket sockets connector connectors connection terminal terminals contact contacts wire wires wiring light lights lamp lamps "
            .Split(' ', StringSplitOptions.RemoveEmptyEntries).Concat("led cover lid flap compartment board slider pedal fuse lens laser belt drawer charger indicator icon symbol".Split(' ')).ToFrozenSet();

    private static readonly FrozenSet<string> Turning = new[] { Lexicon.Stem("turn"), Lexicon.Stem("power") }.ToFrozenSet();

    /// <summary>Words before and behind among which a particle is looked for: "turn the thing up", "on off switch".</summary>
    private const int ParticleReach = 3;

    public static bool IsParticle(string word) => word is "on" or "off" or "up" or "down";

    /// <summary>The words found are said of something else than the phrasing speaks of.</summary>
    public static bool ChangeWhatIsMeant(List<Word> words, Phrasing phrasing, ImmutableArray<int> at) =>
        IsOneOf(words, phrasing, at.Min()) || LacksAParticle(words, phrasing, at) || at.Any(i => i + 1 < words.Count && !at.Contains(i + 1) && (IsPartOf(words, i) || IsTurned(words, phrasing, i)));

    /// <summary>The word names a part: "switch", but not of "switches on and off".</summary>
    public static bool IsPart(List<Word> words, int i) =>
        !words[i].Aside && Parts.Contains(words[i].Text) && !(i + 1 < words.Count && IsParticle(words[i + 1].Text));

    private static bool IsPartOf(List<Word> words, int i) => IsPart(words, i + 1) && words[i].Text != words[i + 1].Text;

    private static bool IsTurned(List<Word> words, Phrasing phrasing, int i) =>
        Turning.Contains(words[i].Stem) && IsParticle(words[i + 1].Text) && !phrasing.Particles.Contains(words[i + 1].Text);

    /// <summary>"Switches off when I turn it up" is not yet said by "I switch it off and then switch it back on".</summary>
    private static bool LacksAParticle(List<Word> words, Phrasing phrasing, ImmutableArray<int> at) =>
        phrasing.Particles.Distinct().Skip(1).Any() && phrasing.Particles.Any(p => !words.Skip(at.Min() - ParticleReach).SkipLast(words.Count - 1 - ParticleReach - at.Max()).Any(w => w.Text == p));

    private static bool IsOneOf(List<Word> words, Phrasing phrasing, int first)
    {
        var before = first - 1;
        while (before > 0 && words[before].Text is "the" or "my" or "its" or "these")
            before--;
        return phrasing.Quantity is Quantity.Unsaid && before > 0 && words[before].Text == "of" && words[before - 1].Text == "one";
    }
}
