using System.Globalization;

namespace Triage.Workshop.Exchange.Importing;

internal static class TableDate
{
    /// <summary>Null when the text is no date of this format. Without hours noon is meant, without an offset UTC.</summary>
    public static DateTimeOffset? Read(string text, string format) =>
        !DateTimeOffset.TryParseExact(text, format, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var date) ? null
        : format.Length > 1 && !format.Contains('H', StringComparison.Ordinal) && !format.Contains('h', StringComparison.Ordinal) ? date.AddHours(12)
        : date;

    public static string Write(DateTime utc, string format) => utc.ToString(format, CultureInfo.InvariantCulture);
}
