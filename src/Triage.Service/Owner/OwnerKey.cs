using System.Buffers.Text;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Triage.Service.Owner;

/// <summary>
/// What proves on this machine that one is the bench's owner: a secret in a file that nobody else can read. Browsers and one-time addresses
/// get codes made from it (HMAC-SHA-256, RFC 2104), never itself.
/// </summary>
public sealed class OwnerKey
{
    private const string Name = "owner-key";
    private const int Bytes = 32;

    private readonly byte[] secret;

    private OwnerKey(string text) => (Text, secret) = (text, Encoding.UTF8.GetBytes(text));

    /// <summary>As the file holds it, for the head <c>Authorization: Bearer</c>.</summary>
    public string Text { get; }

    /// <summary>What a browser keeps that was let in.</summary>
    public string ForBrowsers => Code("browser");

    /// <param name="folder">Where the key is kept; null: it lives as long as this object.</param>
    /// <returns>The one that is kept there, or a new one where there is none, or where others could have read it.</returns>
    /// <exception cref="CannotServeException">It can be neither read nor written.</exception>
    public static OwnerKey Of(string? folder)
    {
        if (folder is not null && Find(folder) is { } kept)
            return kept;
        var made = new OwnerKey(Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(Bytes)));
        if (folder is null)
            return made;
        try
        {
            PrivateFolder.At(folder).Write(Name, made.secret);
            return made;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new CannotServeException($"The owner's key cannot be kept in {folder}: {e.Message} Look for a full disk or a read-only folder, or start with --open-to-this-machine.", e);
        }
    }

    /// <summary>The key that is kept there; null when there is none that only its owner can read.</summary>
    public static OwnerKey? Find(string folder)
    {
        try
        {
            var place = PrivateFolder.At(folder);
            return place.IsPrivate(Name) && place.Read(Name) is { Length: > 0 } bytes ? new(Encoding.UTF8.GetString(bytes).Trim()) : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    public static string FileIn(string folder) => Path.Combine(folder, Name);

    /// <summary>Lets one browser in, once, within an hour.</summary>
    public Uri Address(int port, DateTimeOffset now) => new(new UriBuilder(Uri.UriSchemeHttp, "127.0.0.1", port).Uri, WayIn(now));

    internal string WayIn(DateTimeOffset now) => $"{OwnerDoor.WayIn}?once={OneTime(now)}";

    private string OneTime(DateTimeOffset now)
    {
        var said = string.Create(CultureInfo.InvariantCulture, $"{now.ToUnixTimeMilliseconds()}.{Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(Bytes / 2))}");
        return $"{said}.{Code(said)}";
    }

    /// <summary>When a one-time code was made; null when it was not made with this key.</summary>
    public DateTimeOffset? Made(string oneTime) =>
        oneTime.LastIndexOf('.') is var end and > 0 && Same(oneTime[(end + 1)..], Code(oneTime[..end]))
        && long.TryParse(oneTime.Split('.')[0], CultureInfo.InvariantCulture, out var at)
            ? DateTimeOffset.FromUnixTimeMilliseconds(at) : null;

    /// <summary>Compares without telling by its time how much of it is right.</summary>
    public static bool Same(string shown, string right) => CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(shown), Encoding.UTF8.GetBytes(right));

    private string Code(string of) => Base64Url.EncodeToString(HMACSHA256.HashData(secret, Encoding.UTF8.GetBytes(of)));
}
