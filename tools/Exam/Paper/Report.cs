using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Triage.Tools.Exam.Scoring;

namespace Triage.Tools.Exam.Paper;

/// <summary>What all machines together say.</summary>
internal static class Report
{
    private static readonly JsonSerializerOptions Wire = new() { PropertyNamingPolicy = JsonNamingPolicy.CamelCase };

    public static IEnumerable<string> Text(ImmutableArray<CaseScore> scores) =>
    [
        .. scores.GroupBy(s => s.Case.Id).Select(same => (same.Key, Ids: same.SelectMany(s => s.Unjudged).Distinct().Order(StringComparer.Ordinal).ToList())).Where(c => c.Ids.Count > 0)
            .Select(c => $"unjudged in {c.Key}: {string.Join(", ", c.Ids)}"),
        .. scores.GroupBy(s => s.Book).Select(book => Line(book.Key, Totals.Of([.. book]))),
        string.Create(CultureInfo.InvariantCulture, $"unjudged {Totals.Unjudged(scores):P1} of all lines"),
    ];

    /// <summary>One line for a program: both books that were played, and the share of unjudged lines.</summary>
    public static string Json(ImmutableArray<CaseScore> scores)
    {
        var all = scores.GroupBy(s => s.Book).OrderBy(b => b.Key, StringComparer.Ordinal).ToDictionary(b => b.Key, b => (object)Totals.Of([.. b]));
        all["unjudged"] = Totals.Unjudged(scores);
        return JsonSerializer.Serialize(all, Wire);
    }

    private static string Line(string book, Totals t) => string.Create(CultureInfo.InvariantCulture,
        $"{book,-5} {t.Cases} cases: first step acceptable {t.FirstAcceptable:P0}, silly {t.Silly:P0}, unsafe {t.Unsafe}, rightly ended {t.Ended:P0}, median minutes {(t.MinutesRatio is { } ratio ? $"{ratio:0.00} × the master's" : "infinite")}, true fault among the first three {t.RankedFirst3:P0}");
}
