using System.Collections.Immutable;
using Triage.Workshop.Exchange;

namespace Triage.Workshop.Keeping;

/// <summary>
/// The files of a book's folder that are its own, with forward slashes. Links are not followed; what git keeps, the bench's keys and lock, and halves
/// of files are passed over.
/// </summary>
/// <param name="Paths">Relative, in the order of their paths.</param>
/// <param name="LeftOut">What a person may look for in a backup and not find.</param>
internal sealed record BookFiles(ImmutableArray<string> Paths, ImmutableArray<LeftOut> LeftOut)
{
    private static readonly string[] OfThisMachine = [".bench/lock", ".bench/keys", ".bench/import"];

    /// <exception cref="IOException">The folder is gone or cannot be read.</exception>
    public static BookFiles In(string folder)
    {
        var (paths, left) = (new List<string>(), new List<LeftOut>());
        var all = new EnumerationOptions { AttributesToSkip = 0 };
        var waiting = new Stack<DirectoryInfo>([new(folder)]);
        while (waiting.TryPop(out var next))
        {
            foreach (var entry in next.EnumerateFileSystemInfos("*", all))
            {
                var path = Path.GetRelativePath(folder, entry.FullName).Replace(Path.DirectorySeparatorChar, '/');
                if (IsPassing(path, entry.Name))
                    continue;
                if (WhyNot(path, entry) is { } why)
                    left.Add(new(path, why));
                else if (entry is DirectoryInfo below)
                    waiting.Push(below);
                else
                    paths.Add(path);
            }
        }

        return new([.. paths.Order(StringComparer.Ordinal)], [.. left.OrderBy(l => l.Path, StringComparer.Ordinal)]);
    }

    /// <summary>Of this machine, or of a moment: halves of files, and second names of files that were just replaced.</summary>
    private static bool IsPassing(string path, string name) =>
        OfThisMachine.Contains(path) || name.EndsWith(".half", StringComparison.Ordinal) || path.StartsWith(".bench/kept/.", StringComparison.Ordinal);

    private static string? WhyNot(string path, FileSystemInfo entry) =>
        entry.LinkTarget is not null ? "a link to another place"
        : entry.Name == ".git" ? "git keeps this itself: push it, or clone it besides"
        : !Archive.IsInside(path) ? "no other system can hold a file of this name: give it another"
        : null;
}
