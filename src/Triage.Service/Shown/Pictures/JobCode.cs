using System.Globalization;
using System.Net;
using System.Text;
using Microsoft.AspNetCore.Components;
using QRCoder;

namespace Triage.Service.Shown.Pictures;

/// <summary>A square code (ISO/IEC 18004) with an address in it: the phone's camera opens what it says.</summary>
internal static class JobCode
{
    /// <summary>One picture unit a module. QRCoder's matrix holds the quiet zone of four modules that the standard asks for.</summary>
    /// <param name="address">What it opens.</param>
    /// <param name="opens">What that is, for those who do not see it.</param>
    public static MarkupString Svg(Uri address, string opens)
    {
        using var code = QRCodeGenerator.GenerateQrCode(address.AbsoluteUri, QRCodeGenerator.ECCLevel.M);
        var side = code.ModuleMatrix.Count;
        var dark = new StringBuilder();
        for (var row = 0; row < side; row++)
        {
            for (var at = 0; at < side; at++)
            {
                if (code.ModuleMatrix[row][at])
                    dark.Append(CultureInfo.InvariantCulture, $"M{at} {row}h1v1h-1z");
            }
        }

        return new(string.Create(CultureInfo.InvariantCulture, $"""
            <svg class="code" viewBox="0 0 {side} {side}" shape-rendering="crispEdges" role="img" aria-label="Square code that opens {WebUtility.HtmlEncode(opens)}">
            <rect width="{side}" height="{side}" fill="#fff"/>
            <path d="{dark}" fill="#000"/>
            </svg>
            """));
    }
}
