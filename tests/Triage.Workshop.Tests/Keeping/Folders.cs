using System.Security.Cryptography;

namespace Triage.Workshop.Tests.Keeping;

/// <summary>What lies in folders, byte for byte.</summary>
internal static class Folders
{
    /// <summary>Digest by path; the lock of a bench is left out.</summary>
    public static SortedDictionary<string, string> Content(string folder) => new(
        Directory.EnumerateFiles(folder, "*", new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = 0 })
            .Where(f => Path.GetRelativePath(folder, f) != Path.Combine(".bench", "lock"))
            .ToDictionary(f => Path.GetRelativePath(folder, f), f => Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(f)))), StringComparer.Ordinal);
}
