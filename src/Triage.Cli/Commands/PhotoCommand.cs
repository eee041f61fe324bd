using System.CommandLine;
using Triage.Cli.Typed;

namespace Triage.Cli.Commands;

/// <summary><c>triage photo</c>: a photo kept with a job.</summary>
internal static class PhotoCommand
{
    public static Command Of(Desk desk)
    {
        var id = Inputs.Job();
        var file = Inputs.Text("file", "JPEG, PNG or WebP; it is copied into the book.");
        var words = Inputs.OptionalText("--line", "What it shows; it is kept as a line of its own.");
        var entry = Inputs.Number("--entry", "Number of the entry in the time line that it belongs to, instead of a line.");
        return desk.Command("photo", "Keeps a photo with a job.", [id, file, words, entry], session =>
        {
            var job = PartialIds.Job(session.Bench, session.Text(id));
            var photo = Files.Bytes(session.Text(file));
            return session.ShowRecorded(session.Get(entry) is { } at
                ? session.Steps.Photo(job.Id, Whole(at), photo)
                : session.Steps.Line(job.Id, session.Get(words) ?? "photo", photo));
        });
    }

    private static int Whole(double number) => number == Math.Floor(number) && Math.Abs(number) < int.MaxValue ? (int)number : -1;
}
