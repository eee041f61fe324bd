using System.Security.Cryptography;
using System.Text;

namespace Triage.Workshop.Books;

/// <summary>A file as it was.</summary>
/// <param name="At">When it was replaced.</param>
internal sealed record PastState(DateTimeOffset At, ReadOnlyMemory<byte> Content)
{
    public string Sha256 => Convert.ToHexStringLower(SHA256.HashData(Content.Span));
}

/// <summary>A state as it is kept: what differs from the state kept before it.</summary>
/// <param name="First">Bytes at the beginning that the state before had too: whole lines.</param>
/// <param name="Last">Bytes at the end that it had too: whole lines.</param>
/// <param name="Text">What stands between them.</param>
/// <param name="Base64">The same, where it is no sound text.</param>
/// <param name="Sha256">Of the whole state.</param>
internal sealed record KeptState(DateTimeOffset At, int First, int Last, string? Text, string? Base64, string Sha256)
{
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    public static KeptState Of(PastState state, PastState? before)
    {
        var now = state.Content.Span;
        var then = before is null ? [] : before.Content.Span;
        var first = now[..now.CommonPrefixLength(then)].LastIndexOf((byte)'\n') + 1;
        var last = SameEnd(then[first..], now[first..]);
        var middle = now[first..^last];
        var text = TextOf(middle);
        return new(state.At, first, last, text, text is null ? Convert.ToBase64String(middle) : null, state.Sha256);
    }

    /// <summary>The state, given the one before; null when that makes something else than was kept.</summary>
    public PastState? After(PastState? before)
    {
        var then = before is null ? [] : before.Content.Span;
        if (First < 0 || Last < 0 || (long)First + Last > then.Length || Middle() is not { } middle)
            return null;
        var state = new PastState(At, (byte[])[.. then[..First], .. middle, .. then[^Last..]]);
        return state.Sha256 == Sha256 ? state : null;
    }

    private byte[]? Middle()
    {
        if (Base64 is null)
            return Encoding.UTF8.GetBytes(Text ?? "");
        var bytes = new byte[Base64.Length];
        return Convert.TryFromBase64String(Base64, bytes, out var length) ? bytes[..length] : null;
    }

    /// <summary>Length of the end that both have, from the beginning of a line.</summary>
    private static int SameEnd(ReadOnlySpan<byte> one, ReadOnlySpan<byte> other)
    {
        var (most, same) = (Math.Min(one.Length, other.Length), 0);
        while (same < most && one[^(same + 1)] == other[^(same + 1)])
            same++;
        if (same == one.Length && same == other.Length)
            return same;
        var line = other[^same..].IndexOf((byte)'\n');
        return line < 0 ? 0 : same - line - 1;
    }

    private static string? TextOf(ReadOnlySpan<byte> bytes)
    {
        try
        {
            return Strict.GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            return null;
        }
    }
}
