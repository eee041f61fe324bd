using System.Text.Json;
using Triage.Workshop.Books;

namespace Triage.Workshop.Exchange.Take;

/// <summary>Somebody else's book that was copied beside one's own.</summary>
/// <param name="From">What it was taken from.</param>
/// <param name="On">When.</param>
public sealed record TakenBook(string Name, string Folder, Trust Trust, string From, DateTimeOffset On)
{
    private const string Slip = ".taken.json";

    /// <summary>The place of all books taken beside this one.</summary>
    internal static string Shelf(string ownFolder) => Path.TrimEndingDirectorySeparator(Path.GetFullPath(ownFolder)) + ".taken";

    /// <summary>By name. A folder without its slip was never finished and is none.</summary>
    public static IReadOnlyList<TakenBook> Beside(string ownFolder)
    {
        var shelf = new DirectoryInfo(Shelf(ownFolder));
        return !shelf.Exists ? [] : [.. shelf.EnumerateDirectories().Where(d => !d.Name.StartsWith('.')).Select(Read).OfType<TakenBook>().OrderBy(b => b.Name, StringComparer.Ordinal)];
    }

    internal void WriteSlip(string folder) =>
        WholeFile.Write(Path.Combine(folder, Slip), JsonSerializer.SerializeToUtf8Bytes(new SlipText(Notes.Words.Of(Trust), From, On)), () => true);

    /// <summary>A slip that cannot be read makes it a stranger's: it is never trusted more than was said.</summary>
    private static TakenBook? Read(DirectoryInfo folder)
    {
        var file = Path.Combine(folder.FullName, Slip);
        if (!File.Exists(file))
            return null;
        try
        {
            var slip = JsonSerializer.Deserialize<SlipText>(File.ReadAllBytes(file));
            return new(folder.Name, folder.FullName, Notes.Words.Find<Trust>(slip?.Trust ?? "") is Trust.Known ? Trust.Known : Trust.Stranger, slip?.From ?? "", slip?.On ?? default);
        }
        catch (JsonException)
        {
            return new(folder.Name, folder.FullName, Trust.Stranger, "", default);
        }
    }

    private sealed record SlipText(string Trust, string From, DateTimeOffset On);
}
