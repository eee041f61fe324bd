using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Microsoft.AspNetCore.WebUtilities;
using Triage.Service.Owner;

namespace Triage.Service.Phones;

/// <summary>
/// Phones that may come in, as the list in the book says at this moment: a phone shut out by one process on the book is out of all of them. Of a
/// session's secret only the hash is kept, so that whoever reads the file cannot come in with it.
/// </summary>
public sealed class PairedPhones
{
    private const string Name = "phones.json";
    private const int SecretBytes = 32;
    private const int IdDigits = 12;

    private readonly PrivateFolder folder;

    /// <summary>Shut out here: out even when the list then could not be written.</summary>
    private ImmutableHashSet<string> shutOut = [];

    private PairedPhones(PrivateFolder folder) => this.folder = folder;

    /// <summary>The oldest first.</summary>
    /// <exception cref="CannotServeException">The list cannot be read.</exception>
    public IEnumerable<PairedPhone> All => Read().Where(p => !shutOut.Contains(p.Id)).OrderBy(p => p.Since);

    /// <exception cref="CannotServeException">The list cannot be read; nobody is let in on a guess.</exception>
    internal static PairedPhones Of(PrivateFolder folder)
    {
        var phones = new PairedPhones(folder);
        phones.Read();
        return phones;
    }

    /// <returns>The session's secret, which is kept nowhere here.</returns>
    /// <exception cref="IOException">The list cannot be written; the phone is not paired then.</exception>
    public string Add(string name, DateTimeOffset now)
    {
        var secret = WebEncoders.Base64UrlEncode(RandomNumberGenerator.GetBytes(SecretBytes));
        var hash = HashOf(secret);
        Change(phones => [.. phones, new(hash[..IdDigits], name, now, hash)]);
        return secret;
    }

    /// <summary>Nobody is known while the list cannot be read.</summary>
    public bool Knows(string? secret)
    {
        try
        {
            return secret is not null && HashOf(secret) is var hash && All.Any(p => p.SecretHash == hash);
        }
        catch (CannotServeException)
        {
            return false;
        }
    }

    /// <summary>The phone is out at once, even when the list then cannot be written.</summary>
    /// <exception cref="IOException">The list cannot be written: the phone would be in again after a restart.</exception>
    public void Revoke(string id)
    {
        ImmutableInterlocked.Update(ref shutOut, (set, one) => set.Add(one), id);
        Change(phones => [.. phones.Where(p => p.Id != id)]);
    }

    /// <summary>One at a time, between processes too.</summary>
    private void Change(Func<PairedPhone[], PairedPhone[]> change)
    {
        using var held = folder.Held();
        folder.Write(Name, JsonSerializer.SerializeToUtf8Bytes(change(Read())));
    }

    private PairedPhone[] Read()
    {
        try
        {
            return folder.Read(Name) is { } bytes ? JsonSerializer.Deserialize<PairedPhone[]>(bytes) ?? [] : [];
        }
        catch (Exception e) when (e is JsonException or IOException or UnauthorizedAccessException)
        {
            throw new CannotServeException($"The list of paired phones, {folder.PathOf(Name)}, cannot be read. Delete it, start again, and pair the phones anew.", e);
        }
    }

    private static string HashOf(string secret) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(secret)));
}

/// <param name="Name">What its owner called it.</param>
/// <param name="SecretHash">SHA-256 of the session's secret, hexadecimal.</param>
public sealed record PairedPhone(string Id, string Name, DateTimeOffset Since, string SecretHash);
