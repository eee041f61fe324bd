using System.Collections.Frozen;

namespace Triage.Search.Words;

/// <summary>"Only works intermittently", "sometimes it comes on": the machine itself comes and goes, and no other finding says so.</summary>
internal static class ComesAndGoes
{
    public const string Finding = "stops";

    private const double Sure = 0.85;

    private static readonly FrozenSet<string> Runs =
        "works plays power turn on comes goes keeps starts runs charges only up but".Split(' ').Select(Lexicon.Stem).ToFrozenSet();

    public static IEnumerable<RecognisedFinding> In(List<Word> words, List<PhrasingMatch> chosen, List<Circumstance> circumstances, MachineNames machine)
    {
        foreach (var often in circumstances.Where(c => c.Kind is Circumstance.Intermittent))
        {
            var here = words.FindIndex(w => w.Span.Start < often.Span.End && often.Span.Start < w.Span.End);
            if (here < 0)
                continue;
            var clause = Enumerable.Range(0, words.Count).Where(i => words[i].Clause == words[here].Clause && !words[i].IsBreak).ToList();
            var told = clause.Where(i => words[i].Role is WordRole.Content && !words[i].Aside && !machine.IsAt(words, i)).ToList();
            if (told.TrueForAll(i => Runs.Contains(words[i].Stem) && !HeadWords.IsPart(words, i)) && !chosen.Exists(m => m.Phrasing.Value > 0 && clause.Contains(m.First)))
            {
                var span = words[clause[0]].Span with { Length = words[clause[^1]].Span.End - words[clause[0]].Span.Start };
                yield return new(Finding, "yes", "", span, Sure) { WholeClause = true };
            }
        }
    }
}
