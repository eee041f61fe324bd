using System.CommandLine;
using Triage.Cli.Paper;
using Triage.Notes.Kinds;
using Triage.Workshop;

namespace Triage.Cli.Commands;

/// <summary><c>triage shelf</c>: open jobs.</summary>
internal static class ShelfCommand
{
    public static Command Of(Desk desk) =>
        desk.Command("shelf", "Open jobs, each with what it waits for and its next step.", [], session =>
        {
            var shelf = session.Bench.Notes.Jobs.Where(j => j.IsOpen)
                .OrderBy(j => j.Opened).ThenBy(j => j.Id, StringComparer.Ordinal)
                .Select(j => (Job: j, Row: Row(session.Bench, j)))
                .ToList();
            return session.Show(new { Jobs = shelf.Select(s => s.Row) }, paper => ShelfText.Write(paper, shelf));
        });

    private static OnShelf Row(Bench bench, Job job)
    {
        var answer = bench.AnswerFor(job).Answer;
        var first = answer?.Causes.FirstOrDefault();
        return new(job.Id, job.Name, answer?.Machine ?? job.Unit, job.WaitsFor, job.Opened, first?.Name, first?.Probability, answer?.Next?.Name, answer?.Next?.Kind);
    }
}
