using System.Globalization;
using Microsoft.AspNetCore.Components;

namespace Triage.Service.Shown.Pictures;

/// <summary>A probability before and after, one bar above the other.</summary>
internal static class ChangeBar
{
    private const int Width = 100, Height = 14;

    public static MarkupString Svg(double before, double after) => new(string.Create(CultureInfo.InvariantCulture, $"""
        <svg class="bar" viewBox="0 0 {Width} {Height}" preserveAspectRatio="none" role="img" aria-label="{Text(before, after)}">
        <rect class="track" width="{Width}" height="{Height}"/>
        <rect class="before" width="{At(before)}" height="{Height / 2}"/>
        <rect class="fill" y="{Height / 2}" width="{At(after)}" height="{Height / 2}"/>
        </svg>
        """));

    public static string Text(double before, double after) => $"before {Percent.Of(before)}, after {Percent.Of(after)}";

    private static string At(double probability) => (Width * Math.Clamp(probability, 0, 1)).ToString("0.##", CultureInfo.InvariantCulture);
}
