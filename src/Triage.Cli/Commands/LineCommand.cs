using System.CommandLine;
using Triage.Cli.Typed;

namespace Triage.Cli.Commands;

/// <summary><c>triage line</c>: one line, kept as written.</summary>
internal static class LineCommand
{
    public static Command Of(Desk desk)
    {
        var id = Inputs.Job();
        var text = Inputs.Text("line", "What was done, in one line: \"C14 short, 47/16, plays\".");
        var photos = Inputs.Texts("--photo", "Photo files, relative to the book.");
        return desk.Command("line", "Keeps one quick line as written.", [id, text, photos], session =>
        {
            var job = PartialIds.Job(session.Bench, session.Text(id));
            return session.ShowRecorded(session.Steps.Line(job.Id, session.Text(text), [.. session.Get(photos) ?? []]));
        });
    }
}
