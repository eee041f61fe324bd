namespace Triage.Workshop.Store;

/// <summary>A file that appears whole or not at all.</summary>
internal static class WholeFile
{
    public static void Write(string file, ReadOnlyMemory<byte> bytes)
    {
        var half = Path.Combine(Path.GetDirectoryName(file)!, $".{Path.GetFileName(file)}.{Environment.ProcessId}.half");
        try
        {
            using (var handle = File.OpenHandle(half, FileMode.Create, FileAccess.Write, FileShare.None, FileOptions.None, bytes.Length))
            {
                RandomAccess.Write(handle, bytes.Span, 0);
                RandomAccess.FlushToDisk(handle);
            }

            File.Move(half, file, overwrite: true);
        }
        catch
        {
            File.Delete(half);
            throw;
        }
    }
}
