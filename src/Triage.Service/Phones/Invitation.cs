using QRCoder;

namespace Triage.Service.Phones;

/// <summary>What a phone's owner has to know to come in.</summary>
/// <param name="Address">Where the bench is found on the network.</param>
/// <param name="Code">To type there; holds once.</param>
/// <param name="Fingerprint">SHA-256 of the certificate that the phone will warn of.</param>
public sealed record Invitation(Uri Address, string Code, DateTimeOffset Until, string Fingerprint)
{
    /// <summary>The pairing page with the code filled in; the button there still has to be pressed.</summary>
    public Uri Link => new(Address, $"{Doorkeeper.PairingPage}?code={Code}");

    /// <summary>The link as a QR code (ISO/IEC 18004) of half blocks, light ones drawn as on a dark terminal; lines end with LF.</summary>
    public string InCharacters()
    {
        using var data = Data();
        using var picture = new AsciiQRCode(data);
        return picture.GetGraphicSmall(drawQuietZones: true, invert: false, endOfLine: "\n");
    }

    /// <summary>The link as a QR code in SVG, black on white in both themes, as cameras want it.</summary>
    public string InSvg()
    {
        using var data = Data();
        using var picture = new SvgQRCode(data);
        return picture.GetGraphic(PixelsPerModule);
    }

    private const int PixelsPerModule = 6;

    private QRCodeData Data() => QRCodeGenerator.GenerateQrCode(Link.AbsoluteUri, QRCodeGenerator.ECCLevel.M);
}
