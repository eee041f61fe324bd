using System.CommandLine;
using Triage.Cli.Typed;

namespace Triage.Cli.Commands;

/// <summary><c>triage taken-off</c>: the strip-down.</summary>
internal static class TakenOffCommand
{
    public static Command Of(Desk desk)
    {
        var id = Inputs.Job();
        var what = Inputs.Text("what", "Screw, shield, cable, board.");
        var where = Inputs.OptionalText("--where", "Where it lies now.");
        var back = Inputs.Flag("--back-on", "It was put back.");
        var note = Inputs.OptionalText("--note", "What is odd about it: damage, a fastener unlike the others.");
        return desk.Command("taken-off", "Records what was taken off and where it lies.", [id, what, where, back, note], session =>
        {
            var job = PartialIds.Job(session.Bench, session.Text(id));
            return session.ShowRecorded(session.Steps.TakenOff(job.Id, session.Text(what), session.Get(where), session.Get(back), session.Get(note)));
        });
    }
}
