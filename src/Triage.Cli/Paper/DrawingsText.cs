using System.Collections.Immutable;
using Triage.Notes;
using Triage.Notes.Kinds;

namespace Triage.Cli.Paper;

/// <summary>Drawings and photos of a device.</summary>
internal static class DrawingsText
{
    public static void Write(Sheet paper, Device device, ImmutableArray<DrawingRow> drawings)
    {
        paper.Title($"{device.Id} {device.Name}");
        if (!device.Boards.IsEmpty)
            paper.Field("boards", string.Join(", ", device.Boards));
        if (drawings.IsEmpty)
            paper.Say("No drawing or photo is named. Put one to it with --add FILE.", 2);
        foreach (var drawing in drawings)
        {
            paper.Field(drawing.Board ?? "every board", drawing.Shows ?? "not said what it shows");
            paper.Raw($"  {Printable.Line(drawing.File)}");
        }
    }
}

/// <summary>What --json says of a device's drawings.</summary>
internal sealed record DrawingsPage(string Device, ImmutableArray<string> Boards, ImmutableArray<DrawingRow> Drawings);

/// <param name="File">Where it lies.</param>
/// <param name="Board">Board revision; null for every one.</param>
internal sealed record DrawingRow(string File, string? Board, string? Shows);
