using System.Collections.Immutable;
using Triage.Notes;

namespace Triage.Workshop.Exchange.Importing;

/// <summary>Every text with which bringing in says that something is wrong.</summary>
internal static class ImportTexts
{
    private static readonly string[] Settings =
    [
        "delimiter", "encoding", "date-format", "id", "class", "device", "unit", "opened", "closed", "complaint", "cause", "grade", "outcome",
        "note-prefix", "not-checked", "findings", "others", "text", "ignore", "prefix", "column", "name", "fixed", "values", "otherwise", "finding", "order",
    ];

    public const string IdNeedsPrefix = "“id” names neither a column nor a prefix. Write {\"column\": \"Job no\"} or {\"prefix\": \"shop-2019-\"}.";

    public const string ClassOrColumn = "“class” is either {\"id\": \"radio-set\", \"name\": \"Radio set\"} (id in lower case letters, digits, hyphens) or {\"column\": \"Kind\"}, or all three: then id and name are for empty cells.";

    public const string BadQuotes = "a quoted cell has a quote inside that is not doubled; write \"\" for it";

    public const string ZeroByte = "it holds a zero byte; the file is damaged, or in another encoding than the map says (utf-16?)";

    public static string SettingMissing(string name) => $"“{name}” is missing; a map needs at least id, class and closed.";

    public static string NoSuchSetting(string name) =>
        $"there is no setting “{name}”." + (Nearest.To(name, Settings) is { } near ? $" Did you mean “{near}”?" : $" There are {string.Join(", ", Settings)}.");

    public static string WrongKindOfValue(string path) => $"the value of {path.TrimStart('$', '.')} is not one that this setting takes.";

    public static string Delimiter(string given) => $"the delimiter “{given}” is not one ASCII character; write one, or \"tab\".";

    public static string UnknownEncoding(string given) => $"no encoding is called “{given}”; write utf-8, latin1, windows-1252, windows-1250, iso-8859-2…";

    public static string DateFormat(string given) => $"“{given}” does not say day, month and year of a date; write one like yyyy-MM-dd or dd.MM.yyyy HH:mm.";

    public static string Prefix(string given) => $"“{given}” has signs that ids do not have; use lower case letters, digits and hyphens.";

    public static string DateOrColumn(string name) => $"“{name}” is either {{\"column\": \"…\"}} or {{\"fixed\": \"…\"}}.";

    public static string NoDate(string text, string format) => $"“{text}” is no date of the form {format}";

    public static string ValuesOf(string column) => $"the values of “{column}” must be two or more, all different, none empty.";

    public static string OrderNeedsValues(string column) => $"“{column}” is ordered, so its values must be listed, the normal one first.";

    public static string NamedTwice(string column) => $"“{column}” is given two uses; give it one.";

    public static string WrongCells(int cells, int columns) => FormattableString.Invariant($"it has {cells} cells where the header has {columns}; look for a delimiter or quote too many or too few");

    public static string NotInEncoding(string encoding) => $"it holds bytes that are not {encoding}; name the right encoding in the map";

    public static string NoId(string column) => $"“{column}” is empty or has no letter or digit to make an id of";

    public static string IdTaken(string id, int row) => FormattableString.Invariant($"its id {id} is that of row {row}");

    public static string IdOfOther(string id) => $"its id {id} belongs to a note that is no job";

    public static string NoClass(string column) => $"“{column}” is empty, so nobody knows what kind of machine it was";

    public static string ClosedBeforeOpened(string closed, string opened) => $"it was closed ({closed}) before it was opened ({opened})";

    public static string NoOutcome(string cell, string column) => $"the map does not say which outcome “{cell}” in “{column}” is";

    public static string NoValue(string cell, string finding, IEnumerable<string> values) =>
        $"“{cell}” is no value of {finding}; its values are {string.Join(", ", values.Take(12))}";

    public static Refusal NoSuchColumn(string column, ImmutableArray<string> header) => new(
        RefusalKind.NotUnderstood, $"The table has no column “{column}”.",
        (Nearest.To(column, header) is { } near ? $"Did you mean “{near}”? " : "") + $"It has: {string.Join(", ", header.Take(60))}.");

    public static Refusal NoHeader(string file) => new(RefusalKind.NotUnderstood, $"{file} is empty.", "The first line must name the columns.");

    public static Refusal ColumnTwice(string column) =>
        new(RefusalKind.NotUnderstood, column.Length == 0 ? "The table has columns without a name." : $"The table has two columns called “{column}”.", "Give each column its own name, in the table's first line.");

    public static Refusal CellWithoutEnd(long line) =>
        new(RefusalKind.NotUnderstood, FormattableString.Invariant($"A cell of the row on line {line} does not end: a quote opens it and none closes it."), "Nothing was brought in. Close the quote, or double it if it is meant.");

    public static Refusal TooManyValues(string column, int most) => new(
        RefusalKind.NotUnderstood, FormattableString.Invariant($"“{column}” has more than {most} different values: that is free text, not a finding."),
        "Nothing was brought in. Name it under text, or list its values.");

    public static Refusal TooManyCauses(string column, int most) => new(
        RefusalKind.NotUnderstood, FormattableString.Invariant($"“{column}” names more than {most} different causes: that is free text."),
        "Nothing was brought in. Name it under text, and sort the causes first.");

    public static Refusal CannotRead(string what, string file, Exception e) =>
        new(RefusalKind.NotFound, $"The {what} {file} cannot be read: {e.Message}", "Nothing was brought in. Look at the name and at who may read it.");

    public static Refusal BroughtInElsewhere(string folder) =>
        new(RefusalKind.CannotWrite, $"Another program is bringing a table into {folder}.", "Wait for it to end, then try again.");

    public static Refusal CannotWrite(string folder, Exception e) =>
        new(RefusalKind.CannotWrite, $"Cannot write in {folder}: {e.Message}", "The book is as it was. Look for a full disk or a read-only folder and run it again; what is staged is used again.");
}
