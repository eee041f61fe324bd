using System.Collections.Immutable;
using System.Globalization;
using System.Net;
using System.Text;
using Microsoft.AspNetCore.Components;
using Triage.Measurements.Quantities;
using Triage.Workshop.Readings;

namespace Triage.Service.Shown.Pictures;

/// <summary>Where a reading lies: a bar for the good range, one for each failure mode that reads otherwise, and a line for the reading.</summary>
internal static class ReadingPlot
{
    private const int Width = 320, Row = 34, Bar = 10, Digits = 3;

    /// <summary>Signs that fit on a row (tried on a phone).</summary>
    private const int Signs = 42;

    /// <summary>Null when there are no ranges to draw, or nothing to draw into them.</summary>
    public static MarkupString? Svg(ReadingVerdict verdict)
    {
        if (verdict.Good is not { } good || verdict.Reading?.Value is not { Kind: MeasuredKind.Value or MeasuredKind.OverRange } shown)
            return null;
        var states = Drawn(verdict);
        var scale = PlotScale.Of(good.Unit, [.. states.Select(s => (s.Low!.Value, s.High!.Value))], shown.Quantity?.Value);
        var height = (states.Length * Row) + 6;
        var svg = new StringBuilder().Append(CultureInfo.InvariantCulture, $"""<svg class="reading" viewBox="0 0 {Width} {height}" role="img" aria-label="{WebUtility.HtmlEncode(Text(verdict))}">""");
        for (var at = 0; at < states.Length; at++)
        {
            var (state, top) = (states[at], at * Row);
            var (from, to) = (Width * scale.At(state.Low!.Value), Width * scale.At(state.High!.Value));
            svg.Append(CultureInfo.InvariantCulture, $"""
                <text x="0" y="{top + 15}">{WebUtility.HtmlEncode(Short($"{Ends(state, good.Unit)}: {state.Name}"))}</text>
                <rect class="track" y="{top + 20}" width="{Width}" height="{Bar}"/>
                <rect class="{(state.State == "good" ? "fill" : "before")}" data-state="{WebUtility.HtmlEncode(state.State)}" x="{from:0.#}" y="{top + 20}" width="{Math.Max(2, to - from):0.#}" height="{Bar}"/>
                """);
        }

        var needle = shown.Kind == MeasuredKind.OverRange ? Width - 1 : Math.Clamp(Width * scale.At(shown.Quantity!.Value.Value), 1, Width - 1);
        return new(svg.Append(string.Concat(states.Select((_, at) => string.Create(CultureInfo.InvariantCulture, $"""<path class="needle" d="M{needle:0.#} {(at * Row) + 17}v{Bar + 6}"/>""")))).Append("</svg>").ToString());
    }

    /// <summary>"12 Ω; good 1 kΩ to 100 MΩ; shorted 0 Ω to 20 Ω".</summary>
    public static string Text(ReadingVerdict verdict) =>
        string.Join("; ", Drawn(verdict).Select(s => Range(s, verdict.Good!.Unit)).Prepend($"Reads {verdict.Reading!.Value}"));

    /// <summary>A mode that reads as a good part does has no bar of its own.</summary>
    private static ImmutableArray<StateVerdict> Drawn(ReadingVerdict verdict)
    {
        var ranged = verdict.States.Where(s => s is { Low: not null, High: not null }).ToList();
        return [.. ranged.Where((s, at) => at == 0 || (s.Low, s.High) != (ranged[0].Low, ranged[0].High))];
    }

    private static string Range(StateVerdict state, Unit unit) => $"{state.Name} {Ends(state, unit)}";

    private static string Ends(StateVerdict state, Unit unit) =>
        $"{ValueText.Format(new(state.Low!.Value, unit), Digits)} to {ValueText.Format(new(state.High!.Value, unit), Digits)}";

    private static string Short(string words) => words.Length <= Signs ? words : words[..(Signs - 1)].TrimEnd() + "…";
}
