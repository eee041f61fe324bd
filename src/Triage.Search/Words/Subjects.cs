using System.Collections.Frozen;

namespace Triage.Search.Words;

/// <summary>"Four keys went quiet", "D5 is dead": a word that can be said of any part is a finding only of the machine or of nothing in particular.</summary>
internal static class Subjects
{
    private static readonly FrozenSet<string> OfAnything =
        Stems("silent quiet stone dead broken work slow weak faint dull hot stops hangs freezes dies off sticks clicks pops");

    /// <summary>What is said of a thing that does its job or does not, without how.</summary>
    public static FrozenSet<string> WorksOrNot { get; } = Stems("works broken dead dies");

    public static bool IsAnother(PhrasingMatch match, List<Word> words, MachineNames machine)
    {
        var told = match.At.Where(i => words[i].Role is WordRole.Content).ToList();
        if ((match.Denial is not null && match.Phrasing.Negation is null) || told.Count == 0 || !told.TrueForAll(i => OfAnything.Contains(words[i].Stem)))
        {
            return false;
        }

        var at = told.Min();
        var subject = Enumerable.Range(0, at).Where(i => words[i].Clause == words[at].Clause && words[i].Role is WordRole.Content && !words[i].Aside).ToList();
        return subject.Count > 0 && (subject.Exists(i => HeadWords.IsPart(words, i)) || !subject.Exists(i => machine.IsAt(words, i)));
    }

    private static FrozenSet<string> Stems(string words) => words.Split(' ').Select(Lexicon.Stem).ToFrozenSet();
}
