using System.Globalization;

namespace Triage.Notes.Parsing;

/// <summary>Dates as notes write them.</summary>
public static class NoteDate
{
    private static readonly string[] WithOffset =
    [
        "yyyy-MM-dd'T'HH:mmzzz", "yyyy-MM-dd'T'HH:mm:sszzz", "yyyy-MM-dd'T'HH:mm:ss.FFFFFFFzzz",
        "yyyy-MM-dd HH:mmzzz", "yyyy-MM-dd HH:mm:sszzz", "yyyy-MM-dd HH:mm:ss zzz", "yyyy-MM-dd HH:mm zzz",
    ];

    private static readonly string[] WithoutOffset =
        ["yyyy-MM-dd'T'HH:mm", "yyyy-MM-dd'T'HH:mm:ss", "yyyy-MM-dd HH:mm", "yyyy-MM-dd HH:mm:ss"];

    /// <summary>Reads a date with offset, one without (taken as UTC), or a plain one (noon UTC); null when it is none of them.</summary>
    /// <param name="hasOffset">False only for a date with a time and no offset.</param>
    public static DateTimeOffset? Read(string text, out bool hasOffset)
    {
        hasOffset = true;
        var zoned = text.EndsWith('Z') ? string.Concat(text.AsSpan(0, text.Length - 1), "+00:00") : text;
        if (DateTimeOffset.TryParseExact(zoned, WithOffset, CultureInfo.InvariantCulture, DateTimeStyles.None, out var date))
        {
            return date;
        }

        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
        {
            return new DateTimeOffset(day, new TimeOnly(12, 0), TimeSpan.Zero);
        }

        hasOffset = false;
        return DateTimeOffset.TryParseExact(text, WithoutOffset, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out date)
            ? date
            : null;
    }

    /// <summary>Writes a date so that <see cref="Read"/> gives it back.</summary>
    public static string Write(DateTimeOffset date) =>
        date.ToString(date.Ticks % TimeSpan.TicksPerSecond == 0 ? "yyyy-MM-dd'T'HH:mm:sszzz" : "yyyy-MM-dd'T'HH:mm:ss.FFFFFFFzzz", CultureInfo.InvariantCulture);
}
