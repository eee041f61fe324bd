using System.Globalization;
using Microsoft.AspNetCore.Components;

namespace Triage.Service.Shown.Pictures;

/// <summary>The interval of a share alone.</summary>
internal static class IntervalBar
{
    private const int Width = 100, Height = 10;

    public static MarkupString Svg(double lower, double upper) => new(string.Create(CultureInfo.InvariantCulture, $"""
        <svg class="bar thin" viewBox="0 0 {Width} {Height}" preserveAspectRatio="none" role="img" aria-label="90 % interval {Percent.Of(lower)} to {Percent.Of(upper)}">
        <rect class="track" width="{Width}" height="{Height}"/>
        <rect class="fill" x="{At(lower)}" width="{At(upper - lower)}" height="{Height}"/>
        </svg>
        """));

    private static string At(double share) => (Width * Math.Clamp(share, 0, 1)).ToString("0.##", CultureInfo.InvariantCulture);
}
