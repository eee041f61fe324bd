using System.CommandLine;
using Triage.Cli.Typed;

namespace Triage.Cli.Commands;

/// <summary><c>triage secured</c>: what can be lost was secured, or could not be.</summary>
internal static class SecuredCommand
{
    public static Command Of(Desk desk)
    {
        var id = Inputs.Job();
        var step = Inputs.Text("step", "Id of what was to be secured first.");
        var done = Inputs.Choice<YesNo>("done", "Was it done? No: it cannot be done.");
        return desk.Command("secured", "Records that something was secured before the fault is looked for.", [id, step, done], session =>
        {
            var job = PartialIds.Job(session.Bench, session.Text(id));
            return session.ShowRecorded(session.Steps.Secured(job.Id, session.Text(step), session.Get(done) == YesNo.Yes));
        });
    }
}
