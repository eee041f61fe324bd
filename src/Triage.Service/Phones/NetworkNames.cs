using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;

namespace Triage.Service.Phones;

/// <summary>Under what names and addresses this machine can be reached from its network.</summary>
internal static class NetworkNames
{
    /// <summary>This machine's name, plain and as multicast DNS says it (RFC 6762).</summary>
    public static string[] Names { get; } = [Dns.GetHostName(), $"{Dns.GetHostName()}.local"];

    /// <summary>IPv4 addresses that a phone may find, those of a network with a way out first.</summary>
    public static IPAddress[] Addresses() =>
    [
        .. NetworkInterface.GetAllNetworkInterfaces()
            .Where(n => n.OperationalStatus == OperationalStatus.Up && n.NetworkInterfaceType != NetworkInterfaceType.Loopback)
            .Select(n => n.GetIPProperties())
            .OrderByDescending(p => p.GatewayAddresses.Count)
            .SelectMany(p => p.UnicastAddresses)
            .Select(a => a.Address)
            .Where(a => a.AddressFamily == AddressFamily.InterNetwork),
    ];

    /// <summary>Whether a Host header means the address that was connected to. A foreign name that somebody points here does not.</summary>
    public static bool IsOwn(string host, IPAddress? connected) =>
        IPAddress.TryParse(host.Trim('[', ']'), out var address)
            ? connected is not null && address.MapToIPv6().Equals(connected.MapToIPv6())
            : Names.Contains(host, StringComparer.OrdinalIgnoreCase);
}
