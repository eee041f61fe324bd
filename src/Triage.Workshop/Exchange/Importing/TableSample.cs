using System.Collections.Immutable;

namespace Triage.Workshop.Exchange.Importing;

/// <summary>The first rows of a table nobody has described yet, with what its bytes say about encoding and delimiter.</summary>
internal sealed record TableSample(string Encoding, string Delimiter, ImmutableArray<SampleColumn> Columns)
{
    private const int Bytes = 1_000_000, MostRows = 2_000;

    private static readonly char[] Delimiters = [',', ';', '\t', '|'];

    /// <exception cref="ImportRefusedException">It cannot be read, or is empty.</exception>
    public static TableSample Of(string file)
    {
        try
        {
            var bytes = Head(file);
            var encoding = EncodingOf(bytes);
            var delimiter = DelimiterOf(TableEncoding.Find(encoding)!.GetString(bytes));
            using var reader = TableReader.Open(file, Bare with { Encoding = encoding, Delimiter = delimiter });
            if (reader.Header.IsEmpty)
                throw new ImportRefusedException(ImportTexts.NoHeader(file));
            var rows = reader.Rows().Where(r => r.Broken is null).Take(MostRows).Select(r => r.Cells).ToList();
            return new(encoding, delimiter, [.. reader.Header.Select((name, at) => new SampleColumn(name, [.. rows.Select(r => r[at].Trim())]))]);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new ImportRefusedException(ImportTexts.CannotRead("table", file, e));
        }
    }

    private static ColumnMap Bare => new() { Id = new(), Class = new(), Closed = new() };

    private static byte[] Head(string file)
    {
        using var stream = File.OpenRead(file);
        var bytes = new byte[Math.Min(stream.Length, Bytes)];
        stream.ReadExactly(bytes);
        return bytes;
    }

    /// <summary>A byte order mark says it; else zero bytes mean sixteen bits; else UTF-8 when it is well formed, and the common Western code page when not.</summary>
    private static string EncodingOf(byte[] bytes) =>
        bytes.AsSpan().StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]) ? "utf-16"
        : bytes.AsSpan().StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]) ? "utf-16BE"
        : Zeros(bytes, 1) > bytes.Length / 4 ? "utf-16"
        : Zeros(bytes, 0) > bytes.Length / 4 ? "utf-16BE"
        : IsUtf8(bytes) ? "utf-8"
        : "windows-1252";

    private static int Zeros(byte[] bytes, int from) => bytes.Where((b, i) => i % 2 == from && b == 0).Count();

    /// <summary>The last character may be cut in two.</summary>
    private static bool IsUtf8(byte[] bytes)
    {
        var cut = bytes.Length == Bytes ? bytes.Length - 4 : bytes.Length;
        while (cut > 0 && cut < bytes.Length && (bytes[cut] & 0xC0) == 0x80)
            cut--;
        return System.Text.Unicode.Utf8.IsValid(bytes.AsSpan(0, cut));
    }

    private static string DelimiterOf(string text)
    {
        var header = text.TrimStart('\uFEFF', '\r', '\n').Split('\n')[0];
        var most = Delimiters.MaxBy(d => header.Count(c => c == d));
        return most == '\t' ? "tab" : most.ToString();
    }
}

/// <summary>One column of the sample.</summary>
internal sealed record SampleColumn(string Name, ImmutableArray<string> Cells)
{
    /// <summary>Words of its name, in lower case.</summary>
    public ImmutableArray<string> Words { get; } =
        [.. Triage.Workshop.Knowledge.NoteIds.From(string.Concat(Name.Select((c, i) => i > 0 && char.IsUpper(c) && char.IsLower(Name[i - 1]) ? $" {c}" : $"{c}")), "").Split('-')];

    public ImmutableArray<string> Said { get; } = [.. Cells.Where(c => c.Length > 0)];

    public int Different => Said.Distinct(StringComparer.Ordinal).Count();

    public bool HasEmptyCells => Said.Length < Cells.Length;

    public double AverageLength => Said.IsEmpty ? 0 : Said.Average(c => c.Length);

    public bool IsNumbers => Said.All(c => c.All(s => char.IsAsciiDigit(s) || s is '.' or ',' or '-'));
}
