using System.CommandLine;
using Triage.Cli.Paper;
using Triage.Cli.Typed;
using Triage.Notes;
using Triage.Workshop.Steps;

namespace Triage.Cli.Commands;

/// <summary><c>triage note</c>: a note as it is written, or written anew.</summary>
internal static class NoteCommand
{
    public static Command Of(Desk desk)
    {
        var id = Inputs.Text("note", "Id of any note, or enough of it.");
        var save = Inputs.OptionalText("--save", "File whose text becomes the note's; it is checked first.");
        var since = Inputs.OptionalText("--since", "With --save: the version that the text was made from, as --json says it.");
        return desk.Command("note", "Prints a note as it is written; with --save, writes another text.", [id, save, since], session =>
        {
            var note = PartialIds.AnyNote(session.Bench, session.Text(id));
            if (session.Get(save) is { } file)
                return Saved(session, note.Id, session.Get(since) ?? throw new RefusedException(CommandTexts.NoVersion(note.Id)), file);
            var source = session.Live.Texts.Read(note.Id) ?? throw new RefusedException(CommandTexts.Unreadable(note.Place.Path, "it is gone."));
            var text = Printable.Text(source.Text);
            return session.Show(
                new { note.Id, note.Kind, note.Name, note.Place.Book, File = Path.Combine(session.Books.First(b => b.Name == note.Place.Book).Folder, note.Place.Path), Text = text, source.Version },
                paper => paper.Raw(text.TrimEnd('\n')));
        });
    }

    private static ExitCode Saved(Session session, string id, string since, string file) => Written(session, id, session.Live.Texts.Save(id, since, Files.Text(file)));

    /// <summary>Says what became of a text.</summary>
    public static ExitCode Written(Session session, string id, NoteSaved saved)
    {
        RefusedException.ThrowIf(saved.Refused);
        session.Show(new { Id = id, saved.Written, session.Live.Texts.Read(id)?.Version, saved.Problems }, paper =>
        {
            foreach (var problem in saved.Problems)
                paper.Raw(Printable.Line($"{problem.Line}:{problem.Column}: {Inputs.Word(problem.Severity)}: {problem.What} {problem.Instead}"));
            paper.Say(saved.Written ? $"{id} is written." : "Nothing was written: mend the errors first.");
        });
        return saved.Problems.Any(p => p.Severity == Severity.Error) ? ExitCode.ErrorsFound : ExitCode.Ok;
    }
}
