using System.Security.Cryptography;
using System.Text;

namespace Triage.Service.Phones;

/// <summary>The one code with which one phone may come in: random, for ten minutes, once, and for few wrong tries.</summary>
public sealed class PairingCode(TimeProvider clock)
{
    public const int MostWrong = 5;

    /// <summary>No letters or digits that look alike; 10 of 32 are 50 bits.</summary>
    private const string Letters = "23456789ABCDEFGHJKLMNPQRSTUVWXYZ";
    private const int Length = 10;

    private readonly Lock trying = new();
    private string? code;
    private DateTimeOffset until;
    private int wrong;

    public static TimeSpan Lifetime { get; } = TimeSpan.FromMinutes(10);

    /// <summary>A new code; the one before it no longer holds.</summary>
    public (string Code, DateTimeOffset Until) Make()
    {
        lock (trying)
        {
            (code, until, wrong) = (RandomNumberGenerator.GetString(Letters, Length), clock.GetUtcNow() + Lifetime, 0);
            return ($"{code[..(Length / 2)]}-{code[(Length / 2)..]}", until);
        }
    }

    /// <summary>Uses the code up when it is the right one.</summary>
    /// <param name="typed">In any case, with or without the hyphen.</param>
    public CodeTried Try(string typed)
    {
        lock (trying)
        {
            if (code is null || clock.GetUtcNow() >= until)
                return CodeTried.Void;
            var plain = string.Concat(typed.ToUpperInvariant().Where(char.IsAsciiLetterOrDigit));
            var right = CryptographicOperations.FixedTimeEquals(Encoding.ASCII.GetBytes(plain), Encoding.ASCII.GetBytes(code));
            if (right || ++wrong >= MostWrong)
                code = null;
            return right ? CodeTried.Right : code is null ? CodeTried.Void : CodeTried.Wrong;
        }
    }
}

/// <summary>What a try was.</summary>
public enum CodeTried
{
    Right,
    Wrong,

    /// <summary>None was made, it was used, it is too old, or there were too many wrong tries.</summary>
    Void,
}
