using System.Collections.Immutable;
using System.Text;
using System.Text.RegularExpressions;

namespace Triage.Workshop.Keeping;

/// <summary>What a backup holds: a SHA-256 (FIPS 180-4) for each file, a line each, as the command <c>sha256sum</c> writes and checks it.</summary>
internal static partial class Manifest
{
    public const string Name = "manifest.sha256";

    /// <summary>Folder in the backup that is the book.</summary>
    public const string Book = "book/";

    public static byte[] Of(IEnumerable<(string Path, string Sha256)> files) =>
        Encoding.UTF8.GetBytes(string.Concat(files.OrderBy(f => f.Path, StringComparer.Ordinal).Select(f => $"{f.Sha256}  {Book}{f.Path}\n")));

    /// <summary>Checksums by path in the book; null when it is no manifest.</summary>
    public static ImmutableDictionary<string, string>? Read(byte[] bytes)
    {
        var files = ImmutableDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach (var line in Encoding.UTF8.GetString(bytes).Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            if (Line.Match(line) is not { Success: true } said || !files.TryAdd(said.Groups[2].Value, said.Groups[1].Value))
                return null;
        }

        return files.ToImmutable();
    }

    [GeneratedRegex(@"^([0-9a-f]{64})  book/(.+)$")]
    private static partial Regex Line { get; }
}
