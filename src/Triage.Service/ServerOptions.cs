using Microsoft.Extensions.Logging;
using Triage.Service.Owner;
using Triage.Service.Phones;

namespace Triage.Service;

/// <summary>Where the bench is served.</summary>
public sealed record ServerOptions
{
    public const int UsualPort = 8137;

    /// <summary>0 takes any free port.</summary>
    public int Port { get; init; } = UsualPort;

    /// <summary>A loopback address, or <c>localhost</c>.</summary>
    public string Address { get; init; } = "127.0.0.1";

    /// <summary>Whom the browser and programs of this machine have to be; null: everybody who uses it comes in.</summary>
    public OwnerKey? Owner { get; init; }

    /// <summary>Lets phones in by pairing; null: this machine only.</summary>
    public PhoneOptions? Phone { get; init; }

    /// <summary>Where the log goes; the console when nothing is said.</summary>
    public Action<ILoggingBuilder>? Logging { get; init; }
}
