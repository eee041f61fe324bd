using System.Collections.Immutable;
using System.CommandLine;
using Triage.Cli.Paper;
using Triage.Cli.Typed;
using Triage.Notes.Kinds;

namespace Triage.Cli.Commands;

/// <summary><c>triage drawings</c>: schematics, layouts and photos of a device.</summary>
internal static class DrawingsCommand
{
    public static Command Of(Desk desk)
    {
        var id = Inputs.Text("device", "Model, by id or name.");
        var board = Inputs.OptionalText("--board", "Only this board revision; with --add, the one it is of.");
        var add = Inputs.OptionalText("--add", "A file to put to the device: JPEG, PNG, WebP or PDF; it is copied into the book.");
        var shows = Inputs.OptionalText("--shows", "With --add: what it shows, designators on it.");
        return desk.Command("drawings", "Drawings and photos of a device; with --add, puts one to it.", [id, board, add, shows], session =>
        {
            var device = PartialIds.Note<Device>(session.Bench, "device", session.Text(id));
            if (session.Get(add) is { } file)
                RefusedException.ThrowIf(session.Live.Drawings.Add(device.Id, Files.Bytes(file), session.Get(board), session.Get(shows)));
            return Shown(session, session.Bench.Notes.Find<Device>(device.Id) ?? device, session.Get(board));
        });
    }

    private static ExitCode Shown(Session session, Device device, string? board)
    {
        var folder = session.Books.First(b => b.Name == device.Place.Book).Folder;
        ImmutableArray<DrawingRow> drawings =
        [
            .. device.Drawings.Where(d => board is null || d.Board is null || d.Board == board).Select(d => new DrawingRow(Path.Combine(folder, d.File), d.Board, d.Shows)),
        ];
        return session.Show(new DrawingsPage(device.Id, device.Boards, drawings), paper => DrawingsText.Write(paper, device, drawings));
    }
}
