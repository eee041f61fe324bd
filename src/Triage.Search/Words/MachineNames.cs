using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Search.Words;

/// <summary>What the whole machine is called, as its class's note has it and as anybody says it: "the set", "CD player", "laptop".</summary>
internal sealed class MachineNames
{
    private static readonly ImmutableArray<ImmutableArray<string>> Anybody = Names(
        "keyboard|synth|synthesiser|piano|organ|radio|amp|amplifier|receiver|deck|recorder|player|stereo|laptop|computer|notebook|camera|clock|console|machine|mechanism|set|unit|thing|device|box|"
        + "turntable|drum machine|calculator|toy|telephone|phone|monitor|television|telly|tv|pc|watch|hifi|hi fi|system|item|appliance|robot|tablet|camcorder|car");

    /// <summary>"My son's is dead": words beside which nothing else is meant than the machine.</summary>
    private static readonly ImmutableHashSet<string> Owners = Stems("power son daughter dad mother husband wife grandfather");

    private static readonly ImmutableHashSet<string> Kinds = Stems(
        "cd dvd disc tape cassette video alarm hi fi music remote control toy race game games portable electric electronic digital old new vintage little big twin film reel table pocket desktop bluetooth sound");

    private readonly ImmutableArray<ImmutableArray<string>> own;
    private readonly ILookup<string, ImmutableArray<string>> byFirst;

    private MachineNames(IEnumerable<ImmutableArray<string>> own)
    {
        this.own = [.. own.Where(n => n.Length > 0)];
        byFirst = Anybody.Concat(this.own).ToLookup(n => n[0]);
    }

    public static MachineNames Any { get; } = new([]);

    public static MachineNames Of(DeviceClass device) => new(device.Also.Append(device.Name).SelectMany(n => Names(n)));

    /// <summary>The word belongs to a name of the machine: "CD" of "CD player" does, of "the CD skips" it does not.</summary>
    public bool IsAt(IReadOnlyList<Word> words, int at) =>
        Enumerable.Range(Math.Max(0, at - 2), at - Math.Max(0, at - 2) + 1).Any(from => EndOf(words, from) > at)
        || Owners.Contains(StemOf(words[at])) || (at + 1 < words.Count && Kinds.Contains(StemOf(words[at])) && IsAt(words, at + 1));

    /// <summary>All of these stems are a name that its class's note has: a cassette recorder may have a radio in it that works, a radio is one.</summary>
    public bool Is(IReadOnlyList<string> stems) => own.Any(n => n.SequenceEqual(stems));

    /// <summary>Index behind the longest name that begins here; 0 where none does.</summary>
    private int EndOf(IReadOnlyList<Word> words, int from) =>
        byFirst[StemOf(words[from])].Where(n => from + n.Length <= words.Count && n.Select((stem, i) => StemOf(words[from + i]) == stem).All(same => same))
            .Select(n => from + n.Length).DefaultIfEmpty(0).Max();

    /// <summary>"Hi" is a small word, but not of "hi-fi".</summary>
    private static string StemOf(Word word) => word.IsBreak ? "" : word.Stem.Length > 0 ? word.Stem : Lexicon.Stem(word.Text);

    private static ImmutableArray<ImmutableArray<string>> Names(string names) =>
        [.. names.Split('|').Select(name => name.ToLowerInvariant().Split([' ', '-'], StringSplitOptions.RemoveEmptyEntries).Select(Lexicon.Stem).ToImmutableArray())];

    private static ImmutableHashSet<string> Stems(string words) => [.. words.Split(' ').Select(Lexicon.Stem)];
}
