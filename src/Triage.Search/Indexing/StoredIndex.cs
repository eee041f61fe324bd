using Lucene.Net.Index;
using Lucene.Net.Store;
using Triage.Search.Analysis;
using Directory = Lucene.Net.Store.Directory;

namespace Triage.Search.Indexing;

/// <summary>Whether an index on disk can be used as it is.</summary>
internal static class StoredIndex
{
    private const string KeyName = "made-by";

    /// <summary>What a usable index was made by: document format, Lucene and analyser version.</summary>
    public static IDictionary<string, string> Key { get; } = new Dictionary<string, string>
    {
        [KeyName] = FormattableString.Invariant(
            $"format {NoteDocument.Format}, Lucene {typeof(IndexWriter).Assembly.GetName().Version}, analyser {NoteAnalyzer.Version}"),
    };

    /// <summary>Empties a damaged or outdated index.</summary>
    /// <returns>Why; null when nothing was thrown away.</returns>
    public static string? EmptyIfUnusable(Directory directory)
    {
        if (!directory.ListAll().Any(IsIndexFile))
        {
            return null;
        }

        using var mine = directory.MakeLock(IndexWriter.WRITE_LOCK_NAME);
        if (!mine.Obtain(IndexWriterConfig.DefaultWriteLockTimeout))
        {
            throw new LockObtainFailedException(directory.ToString());
        }

        var reason = Unusable(directory);
        if (reason is not null)
        {
            foreach (var file in directory.ListAll().Where(IsIndexFile))
            {
                directory.DeleteFile(file);
            }
        }

        return reason;
    }

    private static string? Unusable(Directory directory)
    {
        try
        {
            using var reader = DirectoryReader.Open(directory);
            foreach (var leaf in reader.Leaves)
            {
                leaf.AtomicReader.CheckIntegrity();
            }

            return reader.IndexCommit.UserData.TryGetValue(KeyName, out var made) && made == Key[KeyName] ? null : SearchTexts.Outdated;
        }
        catch (Exception e) when (e is IOException or ArgumentException or InvalidOperationException or IndexOutOfRangeException or NotSupportedException)
        {
            return SearchTexts.Damaged;
        }
    }

    private static bool IsIndexFile(string name) =>
        name.StartsWith('_') || name.StartsWith("segments", StringComparison.Ordinal);
}
