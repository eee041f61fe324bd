using System.CommandLine;
using Triage.Cli.Paper;
using Triage.Cli.Typed;

namespace Triage.Cli.Commands;

/// <summary><c>triage wait</c>: what a job waits for.</summary>
internal static class WaitCommand
{
    /// <summary>Waits for nothing but the bench itself.</summary>
    private const string Bench = "bench";

    public static Command Of(Desk desk)
    {
        var id = Inputs.Job();
        var what = Inputs.Text("for", $"part, owner, cool-down, soak…; {Bench} when it waits no more.");
        var until = Inputs.Date("--until", "Until when.");
        return desk.Command("wait", "Says what a job waits for.", [id, what, until], session =>
        {
            var job = PartialIds.Job(session.Bench, session.Text(id));
            var waits = session.Text(what).Trim();
            return session.ShowStep(session.Steps.WaitFor(job.Id, waits is Bench or "" ? null : new(waits, session.Get(until))),
                done => $"waits for {JobText.WaitsFor(done)}");
        });
    }
}
