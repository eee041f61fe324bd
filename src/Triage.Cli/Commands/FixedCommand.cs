using System.CommandLine;
using Triage.Cli.Typed;
using Triage.Notes.Kinds;

namespace Triage.Cli.Commands;

/// <summary><c>triage fixed</c>: a fix done.</summary>
internal static class FixedCommand
{
    public static Command Of(Desk desk)
    {
        var id = Inputs.Job();
        var fix = Inputs.Text("fix", "Id of the fix, or enough of it.");
        var effect = Inputs.Choice<Effect>("effect", "What it did.");
        var tested = Inputs.Flag("--tested-before", "The new part was tested before it went in.");
        return desk.Command("fixed", "Records a fix and what it did.", [id, fix, effect, tested], session =>
        {
            var job = PartialIds.Job(session.Bench, session.Text(id));
            var done = PartialIds.Fix(session.Bench, job, session.Text(fix));
            return session.ShowRecorded(session.Steps.Fixed(job.Id, done, session.Get(effect), session.Get(tested) ? true : null));
        });
    }
}
