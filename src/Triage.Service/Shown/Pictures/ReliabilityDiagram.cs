using System.Globalization;
using Microsoft.AspNetCore.Components;
using Triage.Reasoning.Learning;

namespace Triage.Service.Shown.Pictures;

/// <summary>How often forecasts were right (up) against how sure they were (across), with the line on which both are the same (Murphy and Winkler 1977).</summary>
internal static class ReliabilityDiagram
{
    /// <summary>Picture units: 100 for a chance of 1, with a margin for the words of the axes.</summary>
    private const int Size = 100, Margin = 14;

    private const double Smallest = 1.2, Largest = 3.5;

    public static MarkupString Svg(IReadOnlyCollection<ReliabilityBin> bins)
    {
        var most = bins.Select(b => b.Count).DefaultIfEmpty(1).Max();
        return new(string.Create(CultureInfo.InvariantCulture, $"""
            <svg class="reliability" viewBox="{-Margin} -4 {Size + Margin + 6} {Size + Margin + 4}" role="img" aria-label="{Text(bins)}">
            <rect class="track" width="{Size}" height="{Size}"/>
            <path class="same" d="M0 {Size}L{Size} 0"/>
            {string.Concat(bins.Select(bin => Dot(bin, most)))}
            <text x="0" y="{Size + 9}">0</text><text x="{Size}" y="{Size + 9}" text-anchor="end">sure 100 %</text>
            <text x="-3" y="{Size}" text-anchor="end">0</text><text transform="translate(-4 0) rotate(-90)" text-anchor="end">right 100 %</text>
            </svg>
            """));
    }

    /// <summary>The same in words.</summary>
    public static string Text(IReadOnlyCollection<ReliabilityBin> bins) => bins.Count == 0
        ? "No forecasts yet"
        : string.Join("; ", bins.Select(b => string.Create(CultureInfo.InvariantCulture, $"{Percent.Of(b.Confidence)} sure, {Percent.Of(b.Right)} right of {b.Count}")));

    private static string Dot(ReliabilityBin bin, int most) => string.Create(CultureInfo.InvariantCulture, $"""
        <path class="range" d="M{At(bin.Confidence)} {Up(bin.Interval.Lower)}V{Up(bin.Interval.Upper)}"/><circle class="dot" cx="{At(bin.Confidence)}" cy="{Up(bin.Right)}" r="{Number(Smallest + (Largest - Smallest) * Math.Sqrt((double)bin.Count / most))}"/>
        """);

    private static string At(double chance) => Number(Size * Math.Clamp(chance, 0, 1));

    private static string Up(double chance) => Number(Size * (1 - Math.Clamp(chance, 0, 1)));

    private static string Number(double number) => number.ToString("0.##", CultureInfo.InvariantCulture);
}
