using Triage.Reasoning.Inference;
using Triage.Workshop.Chances;
using Triage.Workshop.Model;

namespace Triage.Workshop.Answers.Wording;

/// <summary>Contradictory evidence is an answer: which entries cannot stand together.</summary>
internal static class ContradictionInWords
{
    public static string Of(Reasoned reasoned, WordsFor words)
    {
        var pieces = reasoned.Posterior.Conflict.Select(item => Piece(item, reasoned.Evidence, words)).Distinct();
        return $"These cannot all be true, going by the notes: {string.Join("; ", pieces)}. Look at one of them again, or take it back.";
    }

    private static string Piece(EvidenceItem item, JobEvidence evidence, WordsFor words) => item.Kind switch
    {
        EvidenceKind.Observation => words.Entry(evidence.ObservedIn[item.Index]),
        EvidenceKind.Likelihood => words.Entry(evidence.MeasuredIn[item.Index]),
        EvidenceKind.Outcome or EvidenceKind.Held => words.Entry(evidence.ActedIn[item.Index]),
        EvidenceKind.SomethingIsWrong => "something is wrong with the machine",
    };
}
