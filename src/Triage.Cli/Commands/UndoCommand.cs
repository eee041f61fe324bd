using System.CommandLine;
using System.Globalization;
using Triage.Cli.Typed;
using Triage.Workshop.Steps;

namespace Triage.Cli.Commands;

/// <summary><c>triage undo</c>: takes an entry of the time line back.</summary>
internal static class UndoCommand
{
    public static Command Of(Desk desk)
    {
        var id = Inputs.Job();
        var entry = new Argument<int>("entry") { Description = "Its number in the time line of triage job." };
        var keep = Inputs.OptionalText("--keep", "File to keep the entry in, for triage put-back.");
        return desk.Command("undo", "Takes one entry of the time line back.", [id, entry, keep], session =>
        {
            var job = PartialIds.Job(session.Bench, session.Text(id));
            var index = session.Get(entry);
            var was = index >= 0 && index < job.Log.Length ? session.Bench.InWords(job, job.Log[index]) : index.ToString(CultureInfo.InvariantCulture);
            if (session.Get(keep) is { } file && index >= 0 && index < job.Log.Length)
                File.WriteAllText(file, EntryText.Of(job.Log[index]));
            return session.ShowStep(session.Steps.Undo(job.Id, index), _ => $"taken back: {was}");
        });
    }
}
