using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Triage.Service.Owner;

namespace Triage.Service.Phones;

/// <summary>The bench's own certificate: made on first use, kept until it runs out. A phone warns once; the fingerprint tells that it is the right one.</summary>
internal static class BenchCertificate
{
    private const string Name = "certificate.pfx";
    private const string ServerAuthentication = "1.3.6.1.5.5.7.3.1"; // RFC 5280, 4.2.1.12

    /// <summary>Phones refuse longer ones (825 days, from memory).</summary>
    private static readonly TimeSpan Lifetime = TimeSpan.FromDays(800);

    public static X509Certificate2 Of(PrivateFolder folder, TimeProvider clock)
    {
        var now = clock.GetUtcNow();
        if (Kept(folder) is { } kept && kept.NotBefore.ToUniversalTime() <= now.UtcDateTime && now.UtcDateTime < kept.NotAfter.ToUniversalTime())
            return kept;
        var bytes = Made(now);
        folder.Write(Name, bytes);
        return Loaded(bytes);
    }

    /// <summary>SHA-256 of the certificate, in pairs of hexadecimal digits as browsers show it.</summary>
    public static string Fingerprint(X509Certificate2 certificate) =>
        string.Join(':', Convert.ToHexString(SHA256.HashData(certificate.RawData)).Chunk(2).Select(pair => new string(pair)));

    private static byte[] Made(DateTimeOffset now)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=bench", key, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(certificateAuthority: false, hasPathLengthConstraint: false, 0, critical: true));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.DigitalSignature, critical: true));
        request.CertificateExtensions.Add(new X509EnhancedKeyUsageExtension([new(ServerAuthentication)], critical: false));
        request.CertificateExtensions.Add(Reachable());
        using var made = request.CreateSelfSigned(now.AddDays(-1), now + Lifetime);
        return made.Export(X509ContentType.Pkcs12);
    }

    private static X509Extension Reachable()
    {
        var names = new SubjectAlternativeNameBuilder();
        foreach (var name in NetworkNames.Names.Where(n => Uri.CheckHostName(n) == UriHostNameType.Dns))
            names.AddDnsName(name);
        foreach (var address in NetworkNames.Addresses().Append(IPAddress.Loopback))
            names.AddIpAddress(address);
        return names.Build();
    }

    /// <summary>One that cannot be read is made anew.</summary>
    private static X509Certificate2? Kept(PrivateFolder folder)
    {
        try
        {
            return folder.Read(Name) is { } bytes ? Loaded(bytes) : null;
        }
        catch (CryptographicException)
        {
            return null;
        }
    }

    private static X509Certificate2 Loaded(byte[] bytes) => X509CertificateLoader.LoadPkcs12(bytes, null);
}
