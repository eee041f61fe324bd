using System.CommandLine;
using Triage.Cli.Paper;
using Triage.Cli.Typed;
using Triage.Notes.Kinds;

namespace Triage.Cli.Commands;

/// <summary><c>triage note</c>: a note as it is written.</summary>
internal static class NoteCommand
{
    public static Command Of(Desk desk)
    {
        var id = Inputs.Text("note", "Id of any note, or enough of it.");
        return desk.Command("note", "Prints a note as it is written.", [id], session =>
        {
            var note = PartialIds.AnyNote(session.Bench, session.Text(id));
            var file = Path.Combine(session.Books.First(b => b.Name == note.Place.Book).Folder, note.Place.Path);
            var text = Plain.Text(Content(file));
            return session.Show(new { note.Id, note.Kind, note.Name, note.Place.Book, File = file, Text = text }, paper => paper.Raw(text.TrimEnd('\n')));
        });
    }

    private static string Content(string file)
    {
        try
        {
            return File.ReadAllText(file);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new RefusedException(CommandTexts.Unreadable(file, e.Message));
        }
    }
}
