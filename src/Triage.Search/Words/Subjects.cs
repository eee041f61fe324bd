using System.Collections.Frozen;

namespace Triage.Search.Words;

/// <summary>"Four keys went quiet", "D5 is dead": a word that can be said of any part is a finding only of the machine or of nothing in particular.</summary>
internal static class Subjects
{
    private static readonly FrozenSet<string> OfAnything =
        Stems("silent quiet dead broken work slow weak faint dull hot stops hangs freezes dies off sticks clicks pops");

    private static readonly FrozenSet<string> Machines = Stems(
        "keyboard synth synthesiser piano organ radio amp amplifier receiver deck recorder player stereo laptop computer notebook camera clock console "
        + "machine set unit thing device box turntable drum calculator toy telephone phone monitor television telly tv pc watch hifi system item appliance robot tablet camcorder sound music power son daughter dad mother husband wife grandfather");

    /// <summary>"CD player", "tape machine", "remote control car": of a machine when one follows.</summary>
    private static readonly FrozenSet<string> Kinds = Stems("cd dvd disc tape cassette video alarm hi fi remote control toy race car game games portable electric electronic digital old new vintage little big twin music film reel table pocket desktop");

    public static bool IsAnother(PhrasingMatch match, List<Word> words, List<PhrasingMatch> chosen)
    {
        var told = match.At.Where(i => words[i].Role is WordRole.Content).ToList();
        if ((match.Denial is not null && match.Phrasing.Negation is null) || told.Count == 0 || !told.TrueForAll(i => OfAnything.Contains(words[i].Stem)))
        {
            return false;
        }

        var at = told.Min();
        var subject = Enumerable.Range(0, at).Where(i => words[i].Clause == words[at].Clause && words[i].Role is WordRole.Content && !words[i].Aside).ToList();
        return subject.Count > 0 && !subject.Exists(i => IsMachine(words, i));
    }

    public static bool IsMachine(IReadOnlyList<Word> words, int at) =>
        Machines.Contains(words[at].Stem) || (Kinds.Contains(words[at].Stem) && at + 1 < words.Count && IsMachine(words, at + 1));

    private static FrozenSet<string> Stems(string words) => words.Split(' ').Select(Lexicon.Stem).ToFrozenSet();
}
