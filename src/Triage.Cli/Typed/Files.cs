namespace Triage.Cli.Typed;

/// <summary>Files that somebody names on the command line.</summary>
internal static class Files
{
    /// <exception cref="RefusedException">It cannot be read.</exception>
    public static byte[] Bytes(string file) => Read(file, File.ReadAllBytes);

    /// <exception cref="RefusedException">It cannot be read.</exception>
    public static string Text(string file) => Read(file, File.ReadAllText);

    private static T Read<T>(string file, Func<string, T> read)
    {
        try
        {
            return read(file);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            throw new RefusedException(CommandTexts.Unreadable(file, e.Message));
        }
    }
}
