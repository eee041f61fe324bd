using System.Globalization;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Triage.Notes;
using Triage.Workshop;
using Triage.Workshop.Steps;

namespace Triage.Service.Http;

/// <summary>Fields of a form as typed; blank is not said. What cannot be read ends the step with a refusal in words.</summary>
internal sealed class Form(IFormCollection fields)
{
    /// <summary>Generic failure of input and output (COR_E_IO): the body is at fault and not the disk.</summary>
    private const int BodyFailed = unchecked((int)0x80131620);

    /// <exception cref="BadHttpRequestException">The body is no form, or a damaged one.</exception>
    /// <param name="limits">Null for those of every form.</param>
    public static async Task<IFormCollection> Fields(HttpContext http, FormOptions? limits = null)
    {
        if (!http.Request.HasFormContentType)
            throw new BadHttpRequestException("The body is no form: send application/x-www-form-urlencoded or multipart/form-data, as the bench's pages do.", StatusCodes.Status415UnsupportedMediaType);
        try
        {
            return limits is null ? await http.Request.ReadFormAsync(http.RequestAborted) : await http.Request.ReadFormAsync(limits, http.RequestAborted);
        }
        catch (Exception e) when (e is InvalidDataException or IOException { HResult: BodyFailed } and not BadHttpRequestException)
        {
            throw new BadHttpRequestException($"The form is damaged: {e.Message}", e);
        }
    }

    public string Need(string name) => fields[name].FirstOrDefault()?.Trim() ?? "";

    public string? Text(string name) => Need(name) is { Length: > 0 } text ? text : null;

    public string[] Many(string name) => [.. fields[name].OfType<string>().Where(v => v.Length > 0)];

    /// <summary>Values of all fields whose names begin so.</summary>
    public string[] ManyStarting(string prefix) => [.. fields.Keys.Where(k => k.StartsWith(prefix, StringComparison.Ordinal)).SelectMany(Many)];

    public string[] Lines(string name) => Need(name).Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    public bool? YesNo(string name) => Text(name) switch { "yes" => true, "no" => false, _ => null };

    /// <summary>A plain number; a decimal comma is understood.</summary>
    public double? Number(string name, string spoken)
    {
        if (Text(name) is not { } text)
            return null;
        return double.TryParse(text.Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number)
            ? number
            : throw new NotUnderstoodException($"The {spoken} “{text}” is no number.", "Write digits only, such as 12 or 2.5.");
    }

    /// <summary>Content of an uploaded photo; null when none was chosen. Of what is none, only the beginning is read.</summary>
    public ReadOnlyMemory<byte>? Photo(string name)
    {
        if (fields.Files[name] is not { Length: > 0 } file)
            return null;
        using var from = file.OpenReadStream();
        Span<byte> head = stackalloc byte[PhotoFile.Head];
        if (PhotoFile.Refuses(file.Length, head[..from.ReadAtLeast(head, head.Length, throwOnEndOfStream: false)]) is { } refused)
            throw new NotUnderstoodException(refused);
        var content = new byte[file.Length];
        from.Position = 0;
        from.ReadExactly(content);
        return content;
    }

    public int Index(string name) =>
        int.TryParse(Need(name), NumberStyles.None, CultureInfo.InvariantCulture, out var index) ? index : -1;

    public DateTimeOffset? Date(string name, TimeZoneInfo zone)
    {
        if (Text(name) is not { } text)
            return null;
        return DateTime.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)
            ? new DateTimeOffset(day, zone.GetUtcOffset(day))
            : throw new NotUnderstoodException($"“{text}” is no date.", "Write it like 2026-03-31.");
    }

    /// <summary>A word of an enumeration, as notes write it.</summary>
    public T Word<T>(string name, string spoken) where T : struct, Enum =>
        Words.Find<T>(Need(name)) ?? throw new NotUnderstoodException(
            Need(name).Length == 0 ? $"No {spoken} was chosen." : $"“{Need(name)}” is no {spoken}.", $"Choose one of {string.Join(", ", Words.All<T>())}.");
}

/// <summary>A field that cannot be read.</summary>
internal sealed class NotUnderstoodException(Refusal refusal) : Exception(refusal.What)
{
    public NotUnderstoodException(string what, string instead) : this(new Refusal(RefusalKind.NotUnderstood, what, instead))
    {
    }

    public Refusal Refusal => refusal;
}
