using System.Globalization;

namespace Triage.Workshop.Exchange.Importing;

/// <summary>What is wrong with a map that is well-formed.</summary>
internal static class ColumnMapCheck
{
    /// <param name="At">The text in the map at which it shows.</param>
    public sealed record Fault(string At, string What);

    public static Fault? FirstFault(ColumnMap map) =>
        Faults(map).FirstOrDefault();

    private static IEnumerable<Fault> Faults(ColumnMap map)
    {
        if (map.Delimiter != "tab" && (map.Delimiter.Length != 1 || !char.IsAscii(map.Delimiter[0])) || map.Delimiter is "\"" or "\n" or "\r")
            yield return new(map.Delimiter, ImportTexts.Delimiter(map.Delimiter));
        if (TableEncoding.Find(map.Encoding) is null)
            yield return new(map.Encoding, ImportTexts.UnknownEncoding(map.Encoding));
        if (!Readable(map.DateFormat))
            yield return new(map.DateFormat, ImportTexts.DateFormat(map.DateFormat));
        foreach (var prefix in new[] { map.Id.Prefix, map.NotePrefix }.Where(p => !IsIdText(p)))
            yield return new(prefix, ImportTexts.Prefix(prefix));
        if (map.Id.Column is null && map.Id.Prefix.Length == 0)
            yield return new("id", ImportTexts.IdNeedsPrefix);
        if (map.Class is not { Column: not null, Id: null, Name: null } && (map.Class.Id is not { Length: > 0 } id || !IsIdText(id) || string.IsNullOrWhiteSpace(map.Class.Name)))
            yield return new("class", ImportTexts.ClassOrColumn);
        foreach (var (at, date) in new[] { ("closed", map.Closed), ("opened", map.Opened) })
        {
            if (date is not null && (date.Column is null) == (date.Fixed is null))
                yield return new(at, ImportTexts.DateOrColumn(at));
            if (date?.Fixed is { } day && TableDate.Read(day, map.DateFormat) is null)
                yield return new(day, ImportTexts.NoDate(day, map.DateFormat));
        }

        foreach (var finding in map.Findings)
        {
            if (finding.Values.Length == 1 || finding.Values.Distinct(StringComparer.Ordinal).Count() < finding.Values.Length || finding.Values.Any(string.IsNullOrWhiteSpace))
                yield return new(finding.Column, ImportTexts.ValuesOf(finding.Column));
            if (finding.Order == ValueOrder.Ordered && finding.Values.IsEmpty)
                yield return new(finding.Column, ImportTexts.OrderNeedsValues(finding.Column));
            if (finding.Finding is { } named && !IsIdText(named))
                yield return new(named, ImportTexts.Prefix(named));
        }

        foreach (var twice in Columns(map).GroupBy(c => c, StringComparer.Ordinal).Where(g => g.Skip(1).Any()))
            yield return new(twice.Key, ImportTexts.NamedTwice(twice.Key));
    }

    /// <summary>Columns with one use only; the dates may share one, and anything may be kept as text beside its use.</summary>
    private static IEnumerable<string> Columns(ColumnMap map) =>
        new[] { map.Id.Column, map.Class.Column, map.Device, map.Unit, map.Complaint, map.Cause, map.Outcome.Column }.OfType<string>()
            .Concat(map.Findings.Select(f => f.Column)).Concat(map.Ignore);

    private static bool IsIdText(string text) => text.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c == '-');

    private static bool Readable(string format)
    {
        try
        {
            var day = new DateTimeOffset(2001, 2, 3, 4, 5, 6, TimeSpan.Zero);
            return TableDate.Read(day.ToString(format, CultureInfo.InvariantCulture), format) is { } read && read.Date == day.Date;
        }
        catch (FormatException)
        {
            return false;
        }
    }
}
