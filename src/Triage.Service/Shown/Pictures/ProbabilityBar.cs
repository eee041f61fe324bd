using System.Globalization;
using Microsoft.AspNetCore.Components;

namespace Triage.Service.Shown.Pictures;

/// <summary>A probability as a bar, its interval as a line with two ends across it.</summary>
internal static class ProbabilityBar
{
    /// <summary>Picture units: 100 across for a probability of 1.</summary>
    private const int Width = 100, Height = 14;

    public static MarkupString Svg(double probability, double lower, double upper) => new(string.Create(CultureInfo.InvariantCulture, $"""
        <svg class="bar" viewBox="0 0 {Width} {Height}" preserveAspectRatio="none" role="img" aria-label="{Text(probability, lower, upper)}">
        <rect class="track" width="{Width}" height="{Height}"/>
        <rect class="fill" width="{At(probability)}" height="{Height}"/>
        <path class="range" d="M{At(lower)} {Height / 2}H{At(upper)}M{At(lower)} 3V{Height - 3}M{At(upper)} 3V{Height - 3}"/>
        </svg>
        """));

    public static string Text(double probability, double lower, double upper) =>
        $"{Percent.Of(probability)}, 90 % interval {Percent.Of(lower)} to {Percent.Of(upper)}";

    private static string At(double probability) => (Width * Math.Clamp(probability, 0, 1)).ToString("0.##", CultureInfo.InvariantCulture);
}
