using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Service.Wire;

/// <summary>Drawings and photos of a device.</summary>
/// <param name="Boards">Its board revisions.</param>
internal sealed record WireDrawings(string Device, string Name, ImmutableArray<string> Boards, ImmutableArray<WireDrawing> Drawings)
{
    /// <param name="board">Only what belongs to this revision, or to none in particular; null for all.</param>
    public static WireDrawings Of(Device device, string? board) => new(
        device.Id,
        device.Name,
        device.Boards,
        [.. device.Drawings.Select((d, i) => new WireDrawing(i, d.File, d.Board, d.Shows)).Where(d => board is null || d.Board is null || d.Board == board)]);
}

/// <param name="Number">By which its file is fetched.</param>
/// <param name="File">Path in the book.</param>
/// <param name="Board">Board revision; absent when it is of every one.</param>
internal sealed record WireDrawing(int Number, string File, string? Board, string? Shows);
