namespace Triage.Workshop.Books;

/// <summary>An editor may write a file in pieces, and says to nobody when it is done: one that changed just now is not done yet.</summary>
internal static class SavedNow
{
    /// <summary>How long a file must not have changed (common practice, no source).</summary>
    public static readonly TimeSpan Quiet = TimeSpan.FromSeconds(1);

    /// <summary>By the file's own time and the system's clock; a file from the future counts as done.</summary>
    public static bool Is(string file) => File.Exists(file) && (TimeProvider.System.GetUtcNow() - File.GetLastWriteTimeUtc(file)).Duration() < Quiet;
}
