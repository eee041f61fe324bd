using System.Collections.Immutable;
using Triage.Cli.Typed;
using Triage.Notes.Kinds;
using Triage.Workshop.Reviews;
using Triage.Workshop.Steps;

namespace Triage.Cli.Paper;

/// <summary>What a closed job taught: the same complaint before and after.</summary>
internal static class ClosedText
{
    public static void Write(Sheet paper, Job job, StepResult closed)
    {
        paper.Title($"{job.Id}: closed, {(job.Outcome is { } outcome ? Inputs.Word(outcome) : "open")}");
        foreach (var remark in closed.Remarks)
            paper.Item("-", remark);
        if (closed.Taught.IsEmpty)
            return;
        paper.Say($"What it taught: the same complaint asked again, before → after, because of job {job.Id}", 2);
        foreach (var cause in closed.Taught.GroupBy(t => (t.Fault, t.FaultName)))
        {
            paper.Say($"{cause.Key.FaultName} ({cause.Key.Fault})", 2, Sheet.Strong);
            foreach (var taught in cause)
                paper.Item(FormattableString.Invariant($"{100 * taught.Before,5:0.0} → {100 * taught.After,5:0.0} %"), taught.DeviceName, 4);
        }
    }
}

/// <summary>What --json says of a closed job.</summary>
/// <param name="Because">Job that taught it.</param>
internal sealed record ClosedPage(Job Job, ImmutableArray<Taught> Taught, string Because, ImmutableArray<string> Remarks);
