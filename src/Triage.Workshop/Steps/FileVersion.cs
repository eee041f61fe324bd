using System.Security.Cryptography;

namespace Triage.Workshop.Steps;

/// <summary>What a file held when a page was made from it, as a short digest.</summary>
internal static class FileVersion
{
    public const int Digits = 24;

    /// <param name="bytes">Null when there is no file yet.</param>
    public static string Of(byte[]? bytes) => bytes is null ? "none" : Convert.ToHexStringLower(SHA256.HashData(bytes))[..Digits];
}
