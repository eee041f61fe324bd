using Triage.Notes.Kinds;
using Triage.Workshop.Answers;

namespace Triage.Cli.Paper;

/// <summary>After each step: what was recorded, three leading causes, the next step.</summary>
internal static class ShortAnswer
{
    private const int Leading = 3;

    /// <summary>Causes less probable than this are shown as 0 %.</summary>
    private const double NothingLeft = 0.005;

    public static void Write(Sheet paper, Session session, Job job, string did, Asked asked, IEnumerable<string> remarks)
    {
        paper.Title($"{job.Id}: {did}");
        foreach (var remark in remarks.Concat(asked.Answer?.Remarks ?? []))
            paper.Item("-", remark);
        if (asked.Refused is { } refused)
            paper.Item("-", refused.ToString());
        if (asked.Answer is { } answer)
            Causes(paper, session, job, answer);
    }

    private static void Causes(Sheet paper, Session session, Job job, Answer answer)
    {
        if (answer.Causes.Length > 0 && answer.Causes.All(c => c.Probability < NothingLeft))
        {
            paper.Say("Going by what was recorded no fault is left. See whether all that was complained of is gone, let it soak, then close the job:", 2);
            paper.Say($"triage close {job.Id} --outcome mended --cause FAULT:GRADE", 8, Sheet.Quiet);
            return;
        }

        foreach (var cause in answer.Causes.Take(Leading))
            paper.Item($"{Amounts.Percent(cause.Probability),5}", cause.Name + (cause == answer.Causes[0] && cause.Why.Length > 0 ? $": {cause.Why}" : ""));
        if (answer.Next is not { } next)
            return;
        paper.Item(" next", $"{next.Name} ({Amounts.Minutes(next.Minutes)}, {Amounts.Money(next.Price, session.Bench.Settings)})", style: Sheet.Strong);
        Cautions.Write(paper, next.Cautions, 8);
        paper.Say(NextStepCard.RecordLine(session.Bench, next, job.Id), 8, Sheet.Quiet);
    }
}
