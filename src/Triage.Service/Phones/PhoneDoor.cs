using System.Security.Cryptography.X509Certificates;
using Triage.Service.Owner;
using Triage.Workshop;

namespace Triage.Service.Phones;

/// <summary>The way in for phones: certificate, code, and where it is.</summary>
internal sealed class PhoneDoor(X509Certificate2 certificate, PairingCode code) : IDisposable
{
    private Uri? address;

    public X509Certificate2 Certificate => certificate;

    public PairingCode Code => code;

    /// <exception cref="CannotServeException">There is no folder in which the certificate could be kept.</exception>
    public static PhoneDoor Of(LiveBench bench) =>
        new(BenchCertificate.Of(Private(bench), bench.Clock), new(bench.Clock));

    /// <exception cref="CannotServeException">No book may be written.</exception>
    public static PrivateFolder Private(LiveBench bench)
    {
        try
        {
            return PrivateFolder.In(bench.Aside ?? throw new CannotServeException("Phones cannot be paired: no open book may be written, and who is paired is kept there. Start with --book FOLDER, a folder of your own."));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new CannotServeException($"Phones cannot be paired: {bench.Aside} cannot be written ({e.Message}). Look for a full disk or a read-only folder.", e);
        }
    }

    /// <param name="port">On which it really listens.</param>
    public void OpenedAt(int port)
    {
        var host = NetworkNames.Addresses().FirstOrDefault()?.ToString() ?? NetworkNames.Names[0];
        address = new UriBuilder(Uri.UriSchemeHttps, host, port).Uri;
    }

    /// <summary>Makes a new code.</summary>
    public Invitation Invite()
    {
        var (made, until) = code.Make();
        return new(address ?? throw new InvalidOperationException("The server has not started."), made, until, BenchCertificate.Fingerprint(certificate));
    }

    public void Dispose() => certificate.Dispose();
}
