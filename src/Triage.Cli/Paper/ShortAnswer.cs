using Triage.Notes.Kinds;
using Triage.Workshop;
using Triage.Workshop.Answers;

namespace Triage.Cli.Paper;

/// <summary>After each step: what was recorded, three leading causes, the next step.</summary>
internal static class ShortAnswer
{
    private const int Leading = 3;

    public static void Write(Sheet paper, Bench bench, Job job, string did, Asked asked, IEnumerable<string> remarks)
    {
        paper.Title($"{job.Id}: {did}");
        foreach (var remark in remarks.Concat(asked.Answer?.Remarks ?? []))
            paper.Item("-", remark);
        if (asked.Refused is { } refused)
            paper.Item("-", refused.ToString());
        if (asked.Answer is { } answer)
            Causes(paper, bench, job, answer);
    }

    private static void Causes(Sheet paper, Bench bench, Job job, Answer answer)
    {
        if (answer.Works)
            paper.Say("It works. What it was:", 2);
        foreach (var cause in answer.Causes.Take(Leading))
            paper.Item($"{Amounts.Percent(cause.Probability),5}", cause.Name + (cause == answer.Causes[0] && cause.Why.Length > 0 ? $": {cause.Why}" : ""));
        if (answer.Next is not { } next)
            return;
        paper.Item(" next", $"{next.Name}{Costs(next, bench)}", style: Sheet.Strong);
        Cautions.Write(paper, next.Cautions, 8);
        paper.Say(NextStepCard.RecordLine(bench, answer, next, job.Id), 8, Sheet.Quiet);
    }

    private static string Costs(NextBestStep next, Bench bench) =>
        next.Minutes > 0 ? $" ({Amounts.Minutes(next.Minutes)}, {Amounts.Money(next.Price, bench.Settings)})" : "";
}
