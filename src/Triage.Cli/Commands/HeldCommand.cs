using System.CommandLine;
using Triage.Cli.Typed;

namespace Triage.Cli.Commands;

/// <summary><c>triage held</c>: whether what worked still worked later.</summary>
internal static class HeldCommand
{
    public static Command Of(Desk desk)
    {
        var id = Inputs.Job();
        var action = Inputs.Text("action", "The reset or fix, or enough of its id.");
        var still = Inputs.Choice<YesNo>("still-works", "Does it still work?");
        var after = Inputs.OptionalText("--after", "After what: power-loss (unless said), soak, days…");
        return desk.Command("held", "Records whether a reset or fix that worked still held later.", [id, action, still, after], session =>
        {
            var job = PartialIds.Job(session.Bench, session.Text(id));
            var done = PartialIds.Action(session.Bench, job, session.Text(action));
            return session.ShowRecorded(session.Steps.Held(job.Id, done, session.Get(still) == YesNo.Yes, session.Get(after) ?? "power-loss"));
        });
    }
}
