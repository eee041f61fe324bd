using System.Collections.Immutable;
using System.Text;
using Triage.Notes;
using Triage.Notes.Files;
using Triage.Notes.Kinds;
using Triage.Notes.Parsing;
using Triage.Workshop.Books;
using Triage.Workshop.Stock;

namespace Triage.Workshop.Knowledge;

/// <summary><c>bench.yaml</c> of the first book that has one: what it says, and what is wrong with it.</summary>
internal sealed record SettingsFile(BenchSettings Settings, ImmutableArray<Problem> Problems)
{
    public const string Name = "bench.yaml";

    /// <summary>Notes that it names, with where.</summary>
    public ImmutableArray<Reference> References { get; init; } = [];

    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>What is written nowhere has its usual value; a value that cannot be is named and left out.</summary>
    public static SettingsFile Of(IEnumerable<BookSource> books)
    {
        var log = new NoteLog(Name);
        var settings = BookOf(books) is { } book && Content(InBook.At(book.Folder, Name)!, log) is { } text && Fields(text, log) is { } fields ? Read(fields) : new();
        return new(settings, log.Problems) { References = log.References };
    }

    /// <summary>The first book that has the file; null when none has.</summary>
    public static BookSource? BookOf(IEnumerable<BookSource> books) => books.FirstOrDefault(b => InBook.At(b.Folder, Name) is { } file && File.Exists(file));

    /// <summary>Everything wrong with the file, kinds of part that no note describes too.</summary>
    public IEnumerable<Problem> AmongNotes(IEnumerable<PartClass> parts)
    {
        var known = parts.SelectMany(p => p.Formerly.Append(p.Id)).ToHashSet(StringComparer.Ordinal);
        var missing = from named in References
                      where !known.Contains(named.Id)
                      let text = NoteProblems.Dangling(named.Kind, named.Id, Nearest.To(named.Id, known))
                      select new Problem(Name, named.Line, named.Column, text.Severity, text.What, text.Instead);
        return Problems.Concat(missing).OrderBy(p => (p.Line, p.Column));
    }

    public bool IsAsBefore(SettingsFile before) =>
        Problems.SequenceEqual(before.Problems)
        && References.SequenceEqual(before.References)
        && Settings with { Tools = null, Instruments = [], Drawer = [] } == before.Settings with { Tools = null, Instruments = [], Drawer = [] }
        && Settings.Drawer.SequenceEqual(before.Settings.Drawer)
        && InstrumentSettings.Same(Settings.Instruments, before.Settings.Instruments)
        && (Settings.Tools ?? []).SequenceEqual(before.Settings.Tools ?? [])
        && Settings.Tools.HasValue == before.Settings.Tools.HasValue;

    /// <summary>The file if it held this.</summary>
    public static SettingsFile Of(byte[] content)
    {
        var log = new NoteLog(Name);
        var settings = Text(content, log) is { } text && Fields(text, log) is { } fields ? Read(fields) : new();
        return new(settings, log.Problems);
    }

    private static BenchSettings Read(FieldReader fields)
    {
        var usual = new BenchSettings();
        var read = new BenchSettings
        {
            ValueOfHour = fields.Amount("value-of-hour") ?? usual.ValueOfHour,
            CostOfDay = fields.Amount("cost-of-day") ?? usual.CostOfDay,
            Currency = fields.Text("currency") ?? usual.Currency,
            UsualWorth = fields.Amount("usual-worth") ?? usual.UsualWorth,
            HandOverPrice = fields.Amount("hand-over-price") ?? usual.HandOverPrice,
            HandlingMinutes = fields.Amount("handling-minutes") ?? usual.HandlingMinutes,
            OwnerCall = Call(fields.Group("owner-call"), usual.OwnerCall),
            WaitingHour = fields.Amount("waiting-hour") ?? usual.WaitingHour,
            Tools = fields.Has("tools") ? fields.Texts("tools") : null,
            Instruments = InstrumentSettings.Read(fields),
            Drawer = StockList.Read(fields),
        };
        fields.Done();
        return read;
    }

    private static OwnerCall Call(FieldReader? call, OwnerCall usual)
    {
        if (call is null)
        {
            return usual;
        }

        var read = new OwnerCall(call.Amount("minutes") ?? usual.Minutes, call.Amount("days") ?? usual.Days);
        call.Done();
        return read;
    }

    private static FieldReader? Fields(string text, NoteLog log)
    {
        try
        {
            return YamlTree.Read(text, 0, text.Length, 1, YamlLimits.Default) switch
                {
                    YamlMapping mapping => new(mapping, log),
                    null or YamlScalar { IsNull: true } => null,
                    var other => throw new NoteSyntaxException(other.Line, other.Column, NoteProblems.NotFields()),
                };
        }
        catch (NoteSyntaxException e)
        {
            log.Add(e.Line, e.Column, e.Text);
            return null;
        }
    }

    private static string? Content(string file, NoteLog log)
    {
        try
        {
            return Text(InBook.ReadAll(file), log);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            log.Add(0, 0, NoteProblems.CannotOpen(e.Message));
            return null;
        }
    }

    private static string? Text(byte[] bytes, NoteLog log)
    {
        if (bytes.Length > YamlLimits.Default.Bytes)
        {
            log.Add(0, 0, NoteProblems.TooLarge(bytes.Length, YamlLimits.Default.Bytes));
            return null;
        }

        try
        {
            return Strict.GetString(bytes);
        }
        catch (DecoderFallbackException e)
        {
            log.Add(1 + bytes.AsSpan(0, e.Index).Count((byte)'\n'), 0, NoteProblems.NotUtf8(bytes[e.Index]));
            return null;
        }
    }
}
