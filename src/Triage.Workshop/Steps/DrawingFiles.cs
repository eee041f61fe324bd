using Triage.Notes.Files;
using Triage.Notes.Kinds;

namespace Triage.Workshop.Steps;

/// <summary>Drawings and photos of a device: only the files that its note names, and only from inside its book.</summary>
internal static class DrawingFiles
{
    /// <summary>Content of a drawing.</summary>
    /// <param name="number">Which of the device's drawings, 0 the first.</param>
    /// <returns>Null when the note names none of this number, the file is gone, is too big, or lies outside the book.</returns>
    public static byte[]? Of(LiveBooks bench, Device device, int number)
    {
        if (number < 0 || number >= device.Drawings.Length || bench.FolderOf(device.Place) is not { } book)
            return null;
        var path = device.Drawings[number].File;
        return InBook.At(book.Source.Folder, path) is { } file && new FileInfo(file) is { Exists: true, Length: <= Limits.Drawing } ? book.Read(path) : null;
    }

    /// <summary>What a drawing's file is, by its content: a picture, or a PDF by its first bytes (ISO 32000-1, 7.5.2).</summary>
    /// <returns>The ending of the file it is kept in, without the dot; null for anything else.</returns>
    public static string? EndingOf(ReadOnlySpan<byte> content) => PhotoKind.Of(content)?.Ending ?? (content.StartsWith("%PDF-"u8) ? "pdf" : null);
}
