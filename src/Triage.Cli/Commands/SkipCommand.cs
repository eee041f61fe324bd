using System.CommandLine;
using Triage.Cli.Typed;
using Triage.Notes.Kinds;

namespace Triage.Cli.Commands;

/// <summary><c>triage skip</c>: a step that was offered and is passed over.</summary>
internal static class SkipCommand
{
    public static Command Of(Desk desk)
    {
        var id = Inputs.Job();
        var step = Inputs.Text("step", "Id of the step.");
        var cannot = new Option<bool>("--cannot-tell") { Description = "It was tried, and cannot be told." };
        return desk.Command("skip", "Passes a step over: it is not offered again, and says nothing of the machine.", [id, step, cannot], session =>
        {
            var job = PartialIds.Job(session.Bench, session.Text(id));
            return session.ShowRecorded(session.Steps.Skip(job.Id, session.Text(step), session.Get(cannot) ? SkipReason.CannotTell : SkipReason.Skip));
        });
    }
}
