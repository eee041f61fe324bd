using System.CommandLine;
using Triage.Cli.Typed;

namespace Triage.Cli.Commands;

/// <summary><c>triage put-back</c>: an entry that was taken back stands in the time line again.</summary>
internal static class PutBackCommand
{
    public static Command Of(Desk desk)
    {
        var id = Inputs.Job();
        var entry = new Argument<int>("entry") { Description = "The number that it had in the time line." };
        var file = Inputs.Text("file", "Where triage undo --keep put it.");
        return desk.Command("put-back", "Puts an entry back that was taken back.", [id, entry, file], session =>
        {
            var job = PartialIds.Job(session.Bench, session.Text(id));
            var at = session.Get(entry);
            return session.ShowStep(session.Steps.PutBack(job.Id, at, Files.Text(session.Text(file))), after => $"put back: {session.Bench.InWords(after, after.Log[at])}");
        });
    }
}
