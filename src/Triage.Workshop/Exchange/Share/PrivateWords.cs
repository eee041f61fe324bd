using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace Triage.Workshop.Exchange.Share;

/// <summary>
/// Finds in free text what tells who the owner is: names given in owner fields, serial numbers, e-mail addresses, telephone numbers. The
/// patterns are our own (common practice, no source): they would rather take one number too many, and everything replaced is listed.
/// </summary>
internal sealed partial class PrivateWords
{
    private const int ShortestName = 3, ShortestSerial = 4, FewestDigits = 8;

    private static readonly string[] Titles = ["Mr", "Mrs", "Ms", "Miss", "Dr", "Prof", "Herr", "Frau", "Madame", "Monsieur", "The", "and", "und"];

    private readonly Regex? owners;

    /// <param name="owners">All owners of the book, as written.</param>
    public PrivateWords(IEnumerable<string> owners) =>
        this.owners = AnyOf(owners.Where(o => o.Trim().Length > ShortestName), RegexOptions.IgnoreCase);

    /// <summary>The text without them; the words put in their place are plain in YAML as well.</summary>
    /// <param name="owner">Of this note: its parts are looked for as well.</param>
    public string Replaced(string text, string? owner, string? serial, Action<string> replaced)
    {
        string Put(string with, Regex? what, string within, Func<string, bool>? only = null) =>
            what is null ? within : what.Replace(within, match =>
            {
                if (only is not null && !only(match.Value))
                    return match.Value;
                replaced(match.Value);
                return with;
            });
        text = Put("(e-mail address)", Mail, text);
        text = Put("(serial number)", AnyOf(serial is { Length: >= ShortestSerial } ? [serial] : [], RegexOptions.IgnoreCase), text);
        text = Put("(owner)", AnyOf(owner is { Length: > 0 } ? [owner] : [], RegexOptions.IgnoreCase), text);
        text = Put("(owner)", owners, text);
        text = Put("(owner)", AnyOf(Parts(owner), RegexOptions.None), text);
        text = Put("(telephone number)", SaidNumber, text);
        return Put("(telephone number)", Number, text, number => number.Count(char.IsAsciiDigit) >= FewestDigits);
    }

    /// <summary>Parts of an owner's name that stand for it.</summary>
    public static IEnumerable<string> Parts(string? owner) =>
        (owner ?? "").Split([' ', '.', ',', '&', '/', '(', ')'], StringSplitOptions.RemoveEmptyEntries)
            .Where(p => p.Length >= ShortestName && char.IsUpper(p[0]) && !Titles.Contains(p));

    /// <summary>Whole words; not within ids and file names.</summary>
    private static Regex? AnyOf(IEnumerable<string> words, RegexOptions options)
    {
        var all = words.Select(w => w.Trim()).Distinct(StringComparer.Ordinal).OrderByDescending(w => w.Length).Select(Regex.Escape).ToImmutableArray();
        return all.IsEmpty ? null : new($@"(?<![\w/-])(?:{string.Join('|', all)})(?![\w/-])", options | RegexOptions.CultureInvariant);
    }

    [GeneratedRegex(@"[\w.+-]+@[\w-]+(?:\.[\w-]+)+")]
    private static partial Regex Mail { get; }

    [GeneratedRegex(@"(?<=(?:^|\W)(?:tel|telephone|phone|mobile|cell|call|ring|fax|whatsapp|telefon|téléphone|teléfono|telefoon|handy)\b[.:]{0,2} {0,2}(?:no[. ]+|him |her |them |me |on |at |number ){0,3})\(?\+?\d[\d \-/().]{4,}\d", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex SaidNumber { get; }

    /// <summary>International with +, with 00, with a trunk 0, or three–three–four; dates, times and figures with a decimal point are none.</summary>
    [GeneratedRegex(@"(?<![\w.,:/+-])(?:\+\d{1,3}[ .\-/]?(?:\(0\) ?)?\d{1,5}(?:[ .\-/]?\d{2,}){1,5}|\(?0[1-9]\d{0,4}\)?(?:[ \-/]\d{2,}){1,5}|0[1-9]\d{7,12}|00[1-9]\d(?:[ \-/]?\d{2,}){2,6}|\(\d{3}\) ?\d{3}-\d{4}|\d{3}-\d{3}-\d{4})(?![\w:-]|[.,]\d)")]
    private static partial Regex Number { get; }
}
