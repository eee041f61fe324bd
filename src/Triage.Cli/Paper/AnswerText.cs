using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Workshop;
using Triage.Workshop.Answers;

namespace Triage.Cli.Paper;

/// <summary>A whole answer: hazards, what was understood, causes, resets, the next step.</summary>
internal static class AnswerText
{
    /// <param name="job">The job as it is, or as it would be taken in.</param>
    /// <param name="recorded">Its notes are on disk, so that what follows can be recorded.</param>
    public static void Write(Sheet paper, Bench bench, Job job, Answer answer, IEnumerable<string> remarks, bool recorded, bool numbers, Func<string, string?> takenFrom)
    {
        paper.Title(answer.Machine);
        Cautions.Write(paper, answer.Cautions);
        foreach (var stop in answer.StopAtOnce)
            paper.Item("!", $"At once: {stop}", style: Sheet.Warning);
        Understood(paper, bench, job);
        ToKnow(paper, [.. answer.Remarks, .. remarks]);
        if (!answer.Causes.IsEmpty)
            CauseRows.Write(paper, answer.Causes, answer.Works, numbers, takenFrom);
        if (answer.FirstPlace is { } firm)
            paper.Say(firm, 2, Sheet.Quiet);
        if (numbers && answer.LeftOut > 0)
            paper.Say(FormattableString.Invariant($"At most {answer.LeftOut:0.#E+0} of the probability is left out."), 2, Sheet.Quiet);
        ResetCards.Write(paper, answer.Resets);
        if (recorded && answer.ForOwner.Length > 0)
        {
            paper.Heading("For the owner");
            paper.Say(answer.ForOwner, 2);
        }
        if (recorded && !answer.Counter.IsEmpty)
        {
            paper.Heading("Ask at the counter");
            foreach (var question in answer.Counter)
                paper.Item("?", $"{question.Ask} {string.Join(" / ", question.Answers.Select(a => $"{a.Name} ({question.Finding} {a.Value})"))}");
        }
        if (answer.Next is { } next)
            NextStepCard.Write(paper, bench, answer, next, recorded ? job.Id : null);
    }

    private static void ToKnow(Sheet paper, ImmutableArray<string> remarks)
    {
        if (remarks.IsEmpty)
            return;
        paper.Heading("To know");
        foreach (var remark in remarks)
            paper.Item("-", remark);
    }

    private static void Understood(Sheet paper, Bench bench, Job job)
    {
        paper.Heading("Understood");
        var words = job.Log.OfType<Saw>().Where(s => s.Words is not null).ToList();
        if (words.Count == 0)
            paper.Say("Nothing that a note lists. Say what the display, the lamps and the sound do.", 2);
        foreach (var saw in words)
            paper.Item("-", $"{bench.InWords(job, saw)}, from “{saw.Words}”");
    }
}
