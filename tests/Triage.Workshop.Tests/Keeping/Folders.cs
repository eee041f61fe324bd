using System.Security.Cryptography;

namespace Triage.Workshop.Tests.Keeping;

/// <summary>What lies in folders, byte for byte.</summary>
internal static class Folders
{
    /// <summary>Digest by path; the lock of a bench, and its second names of what it just replaced, are left out.</summary>
    public static SortedDictionary<string, string> Content(string folder) => new(
        Directory.EnumerateFiles(folder, "*", new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = 0 })
            .Where(f => Path.GetRelativePath(folder, f) != Path.Combine(".bench", "lock") && !Path.GetRelativePath(folder, f).StartsWith(Path.Combine(".bench", "kept", "."), StringComparison.Ordinal))
            .ToDictionary(f => Path.GetRelativePath(folder, f), f => Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(f)))), StringComparer.Ordinal);
}
