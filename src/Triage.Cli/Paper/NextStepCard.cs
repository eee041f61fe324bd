using Triage.Notes.Kinds;
using Triage.Workshop;
using Triage.Workshop.Answers;
using Triage.Workshop.Knowledge;

namespace Triage.Cli.Paper;

/// <summary>The next step: what, how, at what price, why, and what follows.</summary>
internal static class NextStepCard
{
    private const int OthersShown = 3;

    /// <param name="job">Job id for the line that records it; null when there is none.</param>
    public static void Write(Sheet paper, Bench bench, Answer answer, NextBestStep next, string? job)
    {
        paper.Heading($"Next: {next.Name}");
        Cautions.Write(paper, next.Cautions);
        if (!next.Opens.IsEmpty)
            paper.Item("Open first:", string.Join("; ", next.Opens));
        for (var i = 0; i < next.Steps.Length; i++)
            paper.Item($"{i + 1}.", next.Steps[i]);
        foreach (var row in next.Rows)
            paper.Item("?", $"{row.Name}: {string.Join(" / ", row.Values.Select(v => $"{v.Name} ({row.Finding}={v.Value})"))}");
        if (next.Price > 0 || next.Minutes > 0)
            paper.Field("price now", $"{Amounts.Money(next.Price, bench.Settings)}, {Amounts.Minutes(next.Minutes)}{(next.Tools.IsEmpty ? "" : $", with {string.Join(", ", next.Tools)}")}");
        paper.Field("why", next.Why);
        if (next.Turning is { } turning)
            paper.Field("unless", turning);
        foreach (var outcome in next.Rows.IsEmpty ? next.Outcomes : [])
            paper.Field(outcome == next.Outcomes[0] ? "what follows" : "", $"{Amounts.Percent(outcome.Chance)} {outcome.Name}; {outcome.Then}");
        if (next.Part is { } part)
            Part(paper, bench, part);
        if (next.Others.Where(o => o.Kind != StepKind.Stop).Take(OthersShown).ToList() is { Count: > 0 } others)
            paper.Field("or else", string.Join("; ", others.Select(o => $"{o.Name} ({Amounts.Money(o.ExpectedCost, bench.Settings)})")));
        foreach (var forbidden in next.Forbidden.Where(f => f.Kind is StepKind.Reset or StepKind.Fix or StepKind.Swap).Take(OthersShown))
            paper.Field("not now", $"{forbidden.Name}: {forbidden.Why}");
        if (job is not null)
        {
            paper.Field("record it", RecordLine(bench, answer, next, job));
            if (next.Kind is not (StepKind.Close or StepKind.Stop or StepKind.Recheck))
                paper.Field("or", $"triage skip {job} {next.Id} --cannot-tell");
        }
    }

    /// <summary>The command that records the outcome.</summary>
    public static string RecordLine(Bench bench, Answer answer, NextBestStep next, string job) => next.Kind switch
    {
        StepKind.Close => $"triage close {job} --outcome mended --cause {answer.Causes.FirstOrDefault()?.Fault ?? "FAULT"}:measured|swapped|hold-unknown",
        StepKind.Protect => $"triage secured {job} {next.Id} yes|no",
        StepKind.Round => $"triage round {job} {next.Id} {string.Join(' ', next.Rows.Select(r => $"{r.Finding}={r.Values[0].Value}"))}",
        _ when next.Outcomes.Any(o => o.Id == "still-works") => $"triage held {job} {next.Id} yes|no",
        StepKind.Stop => $"triage close {job} --outcome {Outcome(next.Id)}",
        StepKind.Reset => $"triage reset {job} {next.Id} works|no-change",
        StepKind.Fix or StepKind.Swap => $"triage fixed {job} {next.Id} works|no-change",
        _ when next.Id == AlwaysThere.AskConsent => $"triage agree {job} --may-erase yes|no",
        _ when bench.Notes.Find<Finding>(next.Id) is { } finding => $"triage saw {job} {next.Id} {string.Join('|', finding.Values.Select(v => v.Id))}",
        _ => $"triage tested {job} {next.Id} {string.Join('|', next.Outcomes.Select(o => o.Id))}",
    };

    private static string Outcome(string stop) => stop switch
    {
        AlwaysThere.WorkAround => "worked-around",
        AlwaysThere.PartOut => "parted-out",
        AlwaysThere.HandOver => "handed-over",
        _ => "unsolved",
    };

    private static void Part(Sheet paper, Bench bench, ReplacementPart part)
    {
        paper.Field("the part", string.Join(", ", new[] { part.PartClass, part.Designator, part.Rating }.OfType<string>())
            + $"; about {Amounts.Money(part.Money, bench.Settings)}, {part.WaitDays:0.#} days to wait");
        Lines(paper, "must match", part.MustMatch);
        Lines(paper, "may be better", part.MayBeBetter);
        Lines(paper, "never change", part.MustNotChange);
        Lines(paper, "test it first", part.NewCanBeBad);
    }

    private static void Lines(Sheet paper, string label, IEnumerable<string> lines)
    {
        foreach (var line in lines)
            paper.Field(label, line);
    }
}
