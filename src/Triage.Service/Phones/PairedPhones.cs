using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Microsoft.AspNetCore.WebUtilities;
using Triage.Service.Owner;

namespace Triage.Service.Phones;

/// <summary>Phones that may come in. Of a session's secret only the hash is kept, so that whoever reads the file cannot come in with it.</summary>
public sealed class PairedPhones
{
    private const string Name = "phones.json";
    private const int SecretBytes = 32;
    private const int IdDigits = 12;

    private readonly Lock writing = new();
    private readonly PrivateFolder folder;
    private ImmutableDictionary<string, PairedPhone> byHash;

    private PairedPhones(PrivateFolder folder, IEnumerable<PairedPhone> phones) =>
        (this.folder, byHash) = (folder, phones.ToImmutableDictionary(p => p.SecretHash));

    /// <summary>The oldest first.</summary>
    public IEnumerable<PairedPhone> All => byHash.Values.OrderBy(p => p.Since);

    /// <exception cref="CannotServeException">The list cannot be read; nobody is let in on a guess.</exception>
    internal static PairedPhones Of(PrivateFolder folder)
    {
        try
        {
            return new(folder, folder.Read(Name) is { } bytes ? JsonSerializer.Deserialize<PairedPhone[]>(bytes) ?? [] : []);
        }
        catch (Exception e) when (e is JsonException or ArgumentException)
        {
            throw new CannotServeException($"The list of paired phones, {folder.PathOf(Name)}, cannot be read. Delete it, start again, and pair the phones anew.", e);
        }
    }

    /// <returns>The session's secret, which is kept nowhere here.</returns>
    /// <exception cref="IOException">The list cannot be written; the phone is not paired then.</exception>
    public string Add(string name, DateTimeOffset now)
    {
        var secret = WebEncoders.Base64UrlEncode(RandomNumberGenerator.GetBytes(SecretBytes));
        var hash = HashOf(secret);
        lock (writing)
        {
            var after = byHash.Add(hash, new(hash[..IdDigits], name, now, hash));
            Write(after);
            byHash = after;
        }

        return secret;
    }

    public bool Knows(string? secret) => secret is not null && byHash.ContainsKey(HashOf(secret));

    /// <summary>The phone is out at once, even when the list then cannot be written.</summary>
    /// <exception cref="IOException">The list cannot be written: the phone would be in again after a restart.</exception>
    public void Revoke(string id)
    {
        lock (writing)
        {
            byHash = byHash.RemoveRange(byHash.Values.Where(p => p.Id == id).Select(p => p.SecretHash));
            Write(byHash);
        }
    }

    private void Write(ImmutableDictionary<string, PairedPhone> phones) =>
        folder.Write(Name, JsonSerializer.SerializeToUtf8Bytes(phones.Values.OrderBy(p => p.Since)));

    private static string HashOf(string secret) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(secret)));
}

/// <param name="Name">What its owner called it.</param>
/// <param name="SecretHash">SHA-256 of the session's secret, hexadecimal.</param>
public sealed record PairedPhone(string Id, string Name, DateTimeOffset Since, string SecretHash);
