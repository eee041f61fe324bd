using System.Collections.Immutable;
using Triage.Workshop.Answers.Wording;
using Triage.Workshop.Chances;

namespace Triage.Workshop.Answers;

/// <summary>Says when past jobs show that two of the findings usually come together under the leading cause.</summary>
internal static class ComeTogetherInWords
{
    private const int Most = 2;

    public static IEnumerable<string> Of(ImmutableArray<RankedCause> causes, Reasoned reasoned, WordsFor words) =>
        !reasoned.IsMoved || causes.IsEmpty || reasoned.Single.Dependent is not { } dependent ? []
        : dependent.Together(causes[0].Fault, reasoned.Single.Plain)
            .DistinctBy(t => (t.First.Finding, t.Second.Finding).CompareTo((t.Second.Finding, t.First.Finding)) < 0 ? (t.First, t.Second) : (t.Second, t.First))
            .Take(Most)
            .Select(t => $"“{words.Value(t.First.Finding, t.First.Value)}” and “{words.Value(t.Second.Finding, t.Second.Value)}” count as little more than one piece of news for {causes[0].Name}: they come together in {t.Jobs:0.#} past jobs.");
}
