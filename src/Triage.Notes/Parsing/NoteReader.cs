using System.Text;
using Triage.Notes.Kinds;

namespace Triage.Notes.Parsing;

/// <summary>Reads one file of a bench book. Never throws for what the file holds.</summary>
public static class NoteReader
{
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Reads a note from its bytes.</summary>
    /// <param name="path">Relative to the book, with forward slashes.</param>
    public static NoteReading Read(string bookName, string path, ReadOnlyMemory<byte> bytes) =>
        Read(bookName, path, bytes, YamlLimits.Default);

    /// <inheritdoc cref="Read(string, string, ReadOnlyMemory{byte})"/>
    public static NoteReading Read(string bookName, string path, ReadOnlyMemory<byte> bytes, YamlLimits limits)
    {
        var place = new NotePlace(bookName, path);
        var log = new NoteLog(path);
        if (bytes.Length > limits.Bytes)
        {
            return TooLarge(place, bytes.Length, limits.Bytes, bytes);
        }

        var text = Decode(bytes, log);
        var note = log.HasError ? null : ReadNote(place, ref text, log, limits);
        return new NoteReading(note, log.Problems, text) { Place = place };
    }

    /// <summary>The reading of a file that is too large to be read, with its first bytes to search in.</summary>
    internal static NoteReading TooLarge(NotePlace place, long length, long limit, ReadOnlyMemory<byte> firstBytes) =>
        Refused(place, NoteProblems.TooLarge(length, limit), firstBytes[..Math.Min(firstBytes.Length, 4096)]);

    internal static NoteReading Refused(NotePlace place, ProblemText problem, ReadOnlyMemory<byte> bytes)
    {
        var log = new NoteLog(place.Path);
        log.Add(0, 0, problem);
        return new NoteReading(null, log.Problems, NoteText.Of(Encoding.UTF8.GetString(bytes.Span))) { Place = place };
    }

    private static NoteText Decode(ReadOnlyMemory<byte> bytes, NoteLog log)
    {
        try
        {
            return new NoteText { Bytes = bytes, Content = Strict.GetString(bytes.Span) };
        }
        catch (DecoderFallbackException)
        {
            var (line, column, value) = FirstBadByte(bytes.Span);
            log.Add(line, column, NoteProblems.NotUtf8(value));
            return new NoteText { Bytes = bytes, Content = Encoding.Latin1.GetString(bytes.Span) };
        }
    }

    private static (int Line, int Column, byte Value) FirstBadByte(ReadOnlySpan<byte> bytes)
    {
        var (line, column) = (1, 1);
        while (Rune.DecodeFromUtf8(bytes, out var rune, out var used) == System.Buffers.OperationStatus.Done)
        {
            (line, column) = rune.Value == '\n' ? (line + 1, 1) : (line, column + rune.Utf16SequenceLength);
            bytes = bytes[used..];
        }

        return (line, column, bytes[0]);
    }

    private static Note? ReadNote(NotePlace place, ref NoteText text, NoteLog log, YamlLimits limits)
    {
        var opens = FrontMatterBounds.Opens(text.Content);
        if (ConflictMarkers.FirstLine(text.Content) is { } line && (opens || line == 1))
        {
            log.Add(line, 1, NoteProblems.ConflictMarker());
            return null;
        }

        if (!opens)
        {
            return null;
        }

        if (FrontMatterBounds.Find(text) is not { } bounded)
        {
            log.Add(1, 1, NoteProblems.FrontMatterNotClosed());
            return null;
        }

        text = WithFields(bounded, log, limits);
        return text.Fields is { } fields ? NoteFields.Read(place, ref text, fields, log) : null;
    }

    private static NoteText WithFields(NoteText text, NoteLog log, YamlLimits limits)
    {
        try
        {
            switch (YamlTree.Read(text.Content, text.FrontMatterStart, text.FrontMatterEnd, 2, limits))
            {
                case YamlMapping fields:
                    return text with { Fields = fields, Editable = true };
                case null or YamlScalar { IsNull: true }:
                    log.Add(1, 1, NoteProblems.FrontMatterEmpty());
                    return text;
                case { } other:
                    log.Add(other, NoteProblems.NotFields());
                    return text;
            }
        }
        catch (NoteSyntaxException e)
        {
            log.Add(e.Line, e.Column, e.Text);
            return text;
        }
    }
}
