using System.CommandLine;
using Triage.Cli.Paper;
using Triage.Cli.Typed;
using Triage.Notes;
using Triage.Notes.Kinds;
using Triage.Workshop.Steps;

namespace Triage.Cli.Commands;

/// <summary><c>triage history</c>: what steps and saves replaced in a note, shown, brought back or erased.</summary>
internal static class HistoryCommand
{
    public static Command Of(Desk desk)
    {
        var id = Inputs.Text("note", "Id of a note, or enough of it; for one that is gone, its id or the path of its file; bench.yaml for the settings.");
        var show = Inputs.OptionalText("--show", "Prints this version, as the list calls it.");
        var back = Inputs.OptionalText("--back", "Brings this version back; it is checked first, and what it replaces is kept.");
        var since = Inputs.OptionalText("--since", "With --back: the version of the file that you saw, as --json says it; another one on disk is not replaced.");
        var erase = Inputs.Flag("--erase", "Forgets every version kept of this note, as when its owner asks. The note stays as it is.");
        return desk.Command("history", "Lists what steps and saves replaced in a note; shows a version, brings one back, or erases all.", [id, show, back, since, erase], session =>
        {
            var note = Named(session, session.Text(id));
            if (session.Get(erase))
                return Erased(session, note);
            var past = session.Live.History.Of(note)!;
            if (session.Get(show) is { } version)
                return Shown(session, note, past.Find(version) ?? throw new RefusedException(CommandTexts.NoVersionKept(note, version)));
            return session.Get(back) is { } wanted
                ? NoteCommand.Written(session, note, session.Live.History.BringBack(note, wanted, session.Get(since)))
                : session.Show(HistoryPage.Of(note, past), paper => HistoryText.Write(paper, note, past));
        });
    }

    /// <summary>A name under which a history is found as it stands, or else the note that is meant.</summary>
    private static string Named(Session session, string typed) =>
        session.Bench.Notes.Find<Note>(typed) is null && session.Live.History.Of(typed) is not null ? typed : PartialIds.AnyNote(session.Bench, typed).Id;

    private static ExitCode Shown(Session session, string note, NoteVersion version) =>
        session.Show(new { Note = note, version.Version, version.Until, Text = Printable.Text(version.Text) }, paper => paper.Raw(Printable.Text(version.Text).TrimEnd('\n')));

    private static ExitCode Erased(Session session, string note)
    {
        RefusedException.ThrowIf(session.Live.History.Erase(note));
        return session.Show(HistoryPage.Of(note, session.Live.History.Of(note)), paper => paper.Say($"Nothing is kept any more of what {note} said before. Backups made until now still hold it."));
    }
}

/// <summary>What --json says of a note's history.</summary>
/// <param name="Now">Version of its file, for --since.</param>
internal sealed record HistoryPage(string Note, string? Now, IReadOnlyList<HistoryRow> Versions)
{
    public static HistoryPage Of(string note, NotePast? past) => new(note, past?.Now, [.. (past?.Versions ?? []).Select(v => new HistoryRow(v.Version, v.Until, v.Bytes))]);
}

/// <param name="Until">When it was replaced.</param>
internal sealed record HistoryRow(string Version, DateTimeOffset Until, int Bytes);
