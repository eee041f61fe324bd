using System.CommandLine;
using Triage.Cli.Typed;
using Triage.Notes.Kinds;

namespace Triage.Cli.Commands;

/// <summary><c>triage reset</c>: a reset tried.</summary>
internal static class ResetCommand
{
    public static Command Of(Desk desk)
    {
        var id = Inputs.Job();
        var reset = Inputs.Text("reset", "Id of the reset, or enough of it.");
        var effect = Inputs.Choice<Effect>("effect", "What it did.");
        return desk.Command("reset", "Records a reset. One that erases is refused until the owner agreed.", [id, reset, effect], session =>
        {
            var job = PartialIds.Job(session.Bench, session.Text(id));
            var tried = PartialIds.Reset(session.Bench, job, session.Text(reset));
            return session.ShowRecorded(session.Steps.Reset(job.Id, tried.Id, session.Get(effect)));
        });
    }
}
