using System.Security.Cryptography;
using Triage.Notes;
using Triage.Notes.Kinds;
using Triage.Notes.Parsing;
using Triage.Notes.Writing;
using Triage.Workshop.Books;

namespace Triage.Workshop.Steps;

/// <summary>Drawings put to a device: the file goes into the device's book, named by its content, and the device's note names it.</summary>
public sealed class DrawingEditing
{
    private const string Field = "drawings";

    private const int Digits = 16;

    private readonly LiveBooks bench;

    internal DrawingEditing(LiveBooks bench) => this.bench = bench;

    /// <summary>Keeps the file, then names it in the note: killed between the two, a file too many lies there and nothing is lost.</summary>
    /// <param name="device">Device id.</param>
    /// <param name="content">JPEG, PNG, WebP or PDF, up to <see cref="Limits.Drawing"/> bytes.</param>
    /// <param name="board">Board revision; null for every one.</param>
    /// <param name="shows">What it shows, designators on it; null when not said.</param>
    public Refusal? Add(string device, ReadOnlyMemory<byte> content, string? board, string? shows)
    {
        if (bench.Current.Notes.Find<Device>(device) is not { } known)
            return WorkshopRefusals.NoSuch("device", device, Nearest.To(device, bench.Current.Notes.Of<Device>().Select(d => d.Id)) is { } near ? [near] : []);
        if (content.Length > Limits.Drawing)
            return WorkshopRefusals.DrawingTooBig(content.Length, Limits.Drawing);
        if (shows?.Length > Limits.Line)
            return WorkshopRefusals.TooLong("description", shows.Length, Limits.Line);
        if (DrawingFiles.EndingOf(content.Span) is not { } ending)
            return WorkshopRefusals.NotADrawing();
        if (bench.Writable(known.Place) is not { } book)
            return WorkshopRefusals.NotEditable(known.Place.Path, $"book “{known.Place.Book}” was opened for reading only.");
        var file = $"{Field}/{known.Id}-{Convert.ToHexStringLower(SHA256.HashData(content.Span))[..Digits]}.{ending}";
        var isNew = book.Read(file) is null;
        if (book.Keep(file, content) is { } refused)
            return refused;
        var unnamed = Name(book, known, new(file, Said(board), Said(shows)));
        if (unnamed is not null && isNew)
            book.TakeAway(file, known.Place.Path);
        return unnamed;
    }

    private Refusal? Name(BookFolder book, Device known, Drawing drawing)
    {
        Refusal? refused = null;
        var failed = book.Change(known.Place.Path, bytes =>
        {
            (var text, refused) = Named(bytes, known, drawing);
            return text?.Bytes.ToArray();
        });
        bench.Reread(book, [known.Place.Path]);
        return failed ?? refused;
    }

    private static TextEdit Named(byte[] bytes, Device known, Drawing drawing)
    {
        var place = known.Place;
        var reading = NoteReader.Read(place.Book, place.Path, bytes);
        if (reading.Note is not Device device || device.Id != known.Id || !reading.Text.Editable)
            return WorkshopRefusals.NotEditable(place.Path, reading.Problems.OrderByDescending(p => p.Severity).FirstOrDefault()?.What ?? $"it is no longer device {known.Id}.");
        if (device.Drawings.Any(d => d.File == drawing.File))
            return WorkshopRefusals.DrawingListed(drawing.File);
        try
        {
            return reading.Text.Append([Field], WriteMachine.Of(drawing));
        }
        catch (InvalidOperationException e)
        {
            return WorkshopRefusals.NotEditable(place.Path, e.Message);
        }
    }

    private static string? Said(string? words) => string.IsNullOrWhiteSpace(words) ? null : words.Trim();
}
