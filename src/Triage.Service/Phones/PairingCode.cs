using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Text;

namespace Triage.Service.Phones;

/// <summary>
/// The one code with which one phone may come in: random, for ten minutes, once. Who types it wrong too often has to wait; for everybody else it
/// still holds, so that a neighbour cannot void it.
/// </summary>
public sealed class PairingCode(TimeProvider clock)
{
    /// <summary>Wrong tries of one address in a minute.</summary>
    public const int MostWrong = 5;

    /// <summary>No letters or digits that look alike; 10 of 32 are 50 bits.</summary>
    private const string Letters = "23456789ABCDEFGHJKLMNPQRSTUVWXYZ";
    private const int Length = 10;

    /// <summary>Leading bytes of an IPv6 address that are its network's: whoever has one address there has them all (RFC 4291, 2.5.4).</summary>
    private const int NetworkBytes = 8;

    private static readonly TimeSpan Wait = TimeSpan.FromMinutes(1);

    private readonly Lock trying = new();
    private readonly List<(string From, DateTimeOffset At)> wrong = [];
    private string? code;
    private DateTimeOffset until;

    public static TimeSpan Lifetime { get; } = TimeSpan.FromMinutes(10);

    /// <summary>A new code; the one before it no longer holds.</summary>
    public (string Code, DateTimeOffset Until) Make()
    {
        lock (trying)
        {
            (code, until) = (RandomNumberGenerator.GetString(Letters, Length), clock.GetUtcNow() + Lifetime);
            return ($"{code[..(Length / 2)]}-{code[(Length / 2)..]}", until);
        }
    }

    /// <summary>Uses the code up when it is the right one.</summary>
    /// <param name="typed">In any case, with or without the hyphen.</param>
    /// <param name="from">Who tries.</param>
    public CodeTried Try(string typed, IPAddress from)
    {
        lock (trying)
        {
            var (now, who) = (clock.GetUtcNow(), Network(from));
            if (code is null || now >= until)
                return CodeTried.Void;
            wrong.RemoveAll(w => w.At + Wait <= now);
            if (wrong.Count(w => w.From == who) >= MostWrong)
                return CodeTried.TooOften;
            var plain = string.Concat(typed.ToUpperInvariant().Where(char.IsAsciiLetterOrDigit));
            if (!CryptographicOperations.FixedTimeEquals(Encoding.ASCII.GetBytes(plain), Encoding.ASCII.GetBytes(code)))
            {
                wrong.Add((who, now));
                return CodeTried.Wrong;
            }

            code = null;
            return CodeTried.Right;
        }
    }

    private static string Network(IPAddress from) =>
        from.AddressFamily == AddressFamily.InterNetwork || from.IsIPv4MappedToIPv6 ? $"{from.MapToIPv4()}" : Convert.ToHexString(from.GetAddressBytes().AsSpan(0, NetworkBytes));
}

/// <summary>What a try was.</summary>
public enum CodeTried
{
    Right,
    Wrong,

    /// <summary>Too many wrong tries from there within a minute; this one was not looked at.</summary>
    TooOften,

    /// <summary>None was made, it was used, or it is too old.</summary>
    Void,
}
