using System.CommandLine;
using Triage.Cli.Typed;

namespace Triage.Cli.Commands;

/// <summary><c>triage follow-up</c>: the unit was heard of again.</summary>
internal static class FollowUpCommand
{
    private enum Heard
    {
        Good,
        CameBack,
    }

    public static Command Of(Desk desk)
    {
        var id = Inputs.Job();
        var heard = Inputs.Choice<Heard>("heard", "What was heard.");
        var note = Inputs.OptionalText("--note", "In words.");
        return desk.Command("follow-up", "Records that a mended machine was heard of again.", [id, heard, note], session =>
        {
            var job = PartialIds.Job(session.Bench, session.Text(id));
            var cameBack = session.Get(heard) == Heard.CameBack;
            return session.ShowStep(session.Steps.FollowUp(job.Id, cameBack, session.Get(note)), _ => cameBack ? "the fault came back" : "heard of as good");
        });
    }
}
