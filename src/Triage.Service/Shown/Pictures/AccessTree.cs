using System.Globalization;
using System.Net;
using System.Text;
using Microsoft.AspNetCore.Components;
using Triage.Notes.Kinds;

namespace Triage.Service.Shown.Pictures;

/// <summary>What hides behind what: a lid for each step, raised where it is open, joined to the one it lies behind.</summary>
internal static class AccessTree
{
    private const int Width = 340, Row = 34, Indent = 26, Lid = 16;

    /// <summary>Signs that fit on the whole width at the size of the letters (tried on a phone).</summary>
    private const int Signs = 38;

    /// <param name="open">Ids of the steps that are open.</param>
    public static MarkupString Svg(IReadOnlyList<AccessStep> steps, IReadOnlySet<string> open)
    {
        var rows = Rows(steps, null, 0).ToList();
        var svg = new StringBuilder().Append(CultureInfo.InvariantCulture, $"""<svg class="access" viewBox="0 0 {Width} {Math.Max(1, rows.Count) * Row}" role="img" aria-label="{Encoded(Text(steps, open))}">""");
        for (var at = 0; at < rows.Count; at++)
        {
            var (step, depth) = rows[at];
            var (x, y) = (depth * Indent, (at * Row) + ((Row - Lid) / 2));
            if (depth > 0)
                svg.Append(CultureInfo.InvariantCulture, $"""<path class="join" d="M{x - Indent + (Lid / 2)} {(rows.FindIndex(r => r.Step.Id == step.Behind) * Row) + (Row + Lid) / 2}V{y + (Lid / 2)}H{x}"/>""");
            svg.Append(open.Contains(step.Id)
                ? string.Create(CultureInfo.InvariantCulture, $"""<path class="lid open" data-step="{Encoded(step.Id)}" d="M{x + 1} {y + 5}V{y + Lid}H{x + Lid}V{y + 5}M{x + 1} {y + 5}L{x + Lid - 2} {y - 5}"/>""")
                : string.Create(CultureInfo.InvariantCulture, $"""<path class="lid" data-step="{Encoded(step.Id)}" d="M{x + 1} {y + 2}H{x + Lid}V{y + Lid}H{x + 1}Z"/>"""));
            svg.Append(CultureInfo.InvariantCulture, $"""<text x="{x + Lid + 8}" y="{y + Lid - 3}">{Encoded(Short(step.Name, Signs - (depth * 3)))}</text>""");
        }

        return new(svg.Append("</svg>").ToString());
    }

    /// <summary>"top cover: open; mechanism out, behind top cover: shut".</summary>
    public static string Text(IReadOnlyList<AccessStep> steps, IReadOnlySet<string> open) =>
        steps.Count == 0 ? "Nothing is known of how it opens"
        : string.Join("; ", Rows(steps, null, 0).Select(r =>
            $"{r.Step.Name}{(steps.FirstOrDefault(s => s.Id == r.Step.Behind) is { } before ? $", behind {before.Name}" : "")}: {(open.Contains(r.Step.Id) ? "open" : "shut")}"));

    /// <summary>Outermost first, each followed by what lies behind it. A step behind one that is not listed counts as outermost.</summary>
    private static IEnumerable<(AccessStep Step, int Depth)> Rows(IReadOnlyList<AccessStep> steps, string? behind, int depth) =>
        depth > steps.Count ? []
        : steps.Where(s => behind is null ? steps.All(o => o.Id != s.Behind) : s.Behind == behind)
            .SelectMany(s => Rows(steps, s.Id, depth + 1).Prepend((s, depth)));

    /// <summary>What stands in brackets is said beside the picture.</summary>
    private static string Short(string name, int most)
    {
        var plain = name.Split(" (")[0];
        return plain.Length <= most ? plain : plain[..(most - 1)].TrimEnd() + "…";
    }

    private static string Encoded(string text) => WebUtility.HtmlEncode(text);
}
