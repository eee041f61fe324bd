using System.CommandLine;
using Triage.Cli.Typed;

namespace Triage.Cli.Commands;

/// <summary><c>triage opened</c>: a step of the access tree.</summary>
internal static class OpenedCommand
{
    public static Command Of(Desk desk)
    {
        var id = Inputs.Job();
        var step = Inputs.Text("step", "Which part of the machine: case, main-board…");
        var shut = Inputs.Flag("--shut", "It was closed again.");
        return desk.Command("opened", "Records what was opened, or closed again.", [id, step, shut], session =>
        {
            var job = PartialIds.Job(session.Bench, session.Text(id));
            string[] steps = [.. session.Bench.ScopeOf(job)?.Access.Select(s => s.Id) ?? []];
            var opened = steps.Length == 0 ? session.Text(step) : PartialIds.Value("what can be opened", session.Text(step), steps);
            return session.ShowRecorded(session.Steps.Opened(job.Id, opened, session.Get(shut)));
        });
    }
}
