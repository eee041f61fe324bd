using System.CommandLine;
using Triage.Cli.Typed;

namespace Triage.Cli.Commands;

/// <summary><c>triage round</c>: what one look at several things showed.</summary>
internal static class RoundCommand
{
    public static Command Of(Desk desk)
    {
        var id = Inputs.Job();
        var round = Inputs.Text("round", "Id of the round.");
        var rows = new Argument<string[]>("rows") { Description = "finding=value for each thing looked at; what was not looked at is left out." };
        return desk.Command("round", "Records a round: several things looked at at once.", [id, round, rows], session =>
        {
            var job = PartialIds.Job(session.Bench, session.Text(id));
            return session.ShowRecorded(session.Steps.Round(job.Id, session.Text(round), session.Get(rows) ?? []));
        });
    }
}
