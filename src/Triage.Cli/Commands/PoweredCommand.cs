using System.CommandLine;
using Triage.Cli.Typed;
using Triage.Notes.Kinds;

namespace Triage.Cli.Commands;

/// <summary><c>triage powered</c>: power put on, with its limit.</summary>
internal static class PoweredCommand
{
    public static Command Of(Desk desk)
    {
        var id = Inputs.Job();
        var stage = Inputs.Choice<PowerStage>("stage", "How much power.");
        var current = Inputs.OptionalText("--current", "Current drawn: \"120 mA\".");
        return desk.Command("powered", "Records power put on, through a limit or in full.", [id, stage, current], session =>
        {
            var job = PartialIds.Job(session.Bench, session.Text(id));
            return session.ShowRecorded(session.Steps.Powered(job.Id, session.Get(stage), session.Get(current)));
        });
    }
}
