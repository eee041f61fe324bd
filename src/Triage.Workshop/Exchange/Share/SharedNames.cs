using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Triage.Workshop.Exchange.Share;

/// <summary>File names as they are given out: an owner's name in one becomes a plain word and a number; two files never become one.</summary>
internal sealed class SharedNames
{
    private readonly ImmutableArray<string> parts;
    private readonly Regex? any;
    private readonly Dictionary<string, string> names = new(StringComparer.Ordinal);
    private readonly HashSet<string> given = new(StringComparer.OrdinalIgnoreCase);

    /// <param name="parts">Parts of the owners' names.</param>
    public SharedNames(IEnumerable<string> parts)
    {
        this.parts = [.. parts.Select(p => p.ToUpperInvariant()).Distinct(StringComparer.Ordinal).OrderByDescending(p => p.Length).ThenBy(p => p, StringComparer.Ordinal)];
        any = this.parts.IsEmpty ? null : new($@"(?<!\p{{L}})(?:{string.Join('|', this.parts.Select(Regex.Escape))})(?!\p{{L}})", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant);
    }

    /// <summary>The path to give out in place of this one; the same each time.</summary>
    public string Of(string path)
    {
        if (any is null || !any.IsMatch(path))
            return path;
        if (names.TryGetValue(path, out var known))
            return known;
        var name = any.Replace(path, m => string.Create(CultureInfo.InvariantCulture, $"owner{parts.IndexOf(m.Value.ToUpperInvariant()) + 1}"));
        var (stem, kind) = (name[..^Path.GetExtension(name).Length], Path.GetExtension(name));
        for (var n = 2; !given.Add(name); n++)
            name = string.Create(CultureInfo.InvariantCulture, $"{stem}-{n}{kind}");
        return names[path] = name;
    }
}
