using Triage.Notes.Kinds;
using Triage.Workshop.Answers;

namespace Triage.Cli.Paper;

/// <summary>An open job on the shelf.</summary>
/// <param name="Leading">Name of the most probable cause; null when there is no answer.</param>
/// <param name="Next">Name of the next step; null when there is none.</param>
internal sealed record OnShelf(string Id, string Name, string? Machine, Waiting? WaitsFor, DateTimeOffset? Opened, string? Leading, double? Probability, string? Next, StepKind? NextKind);

/// <summary>Open jobs, each with what it waits for and its next step.</summary>
internal static class ShelfText
{
    public static void Write(Sheet paper, IReadOnlyCollection<(Job Job, OnShelf Row)> shelf)
    {
        if (shelf.Count == 0)
            paper.Say("The shelf is empty. Take a machine in with triage take-in.");
        foreach (var (job, row) in shelf)
        {
            paper.Title($"{row.Id} {row.Name}");
            paper.Field("waits for", JobText.WaitsFor(job));
            if (row.Leading is { } leading)
                paper.Field("most likely", $"{leading}, {Amounts.Percent(row.Probability ?? 0)}");
            if (row.Next is { } next)
                paper.Field("next", next);
        }
    }
}
