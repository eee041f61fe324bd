using System.CommandLine;
using Triage.Cli.Typed;

namespace Triage.Cli.Commands;

/// <summary><c>triage counter-closed</c>: the owner has left.</summary>
internal static class CounterClosedCommand
{
    public static Command Of(Desk desk)
    {
        var id = Inputs.Job();
        return desk.Command("counter-closed", "The owner has left: what only he knows costs a call from now on.", [id],
            session => session.ShowRecorded(session.Steps.CloseCounter(PartialIds.Job(session.Bench, session.Text(id)).Id)));
    }
}
