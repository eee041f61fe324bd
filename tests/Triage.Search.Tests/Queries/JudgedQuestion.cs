using System.Collections.Immutable;

namespace Triage.Search.Tests.Queries;

/// <summary>A question with graded judgements, from <c>tests/data/queries.md</c>.</summary>
/// <param name="Grades">Note id to 1 … 3; every other note is 0.</param>
internal sealed record JudgedQuestion(string Text, bool IsOdd, ImmutableDictionary<string, int> Grades)
{
    private const int Cut = 10;

    public static ImmutableArray<JudgedQuestion> Read(string file)
    {
        var questions = File.ReadAllText(file).Split("\n## ")[1..];
        return [.. questions.Select((q, i) => From(q.Split('\n'), i % 2 == 0))];
    }

    /// <summary>Normalised discounted cumulative gain at 10 (Järvelin and Kekäläinen 2002, ACM Transactions on Information Systems 20(4)), gain 2^grade − 1.</summary>
    public double Ndcg(IEnumerable<string> ids) =>
        Gain(ids.Select(id => Grades.GetValueOrDefault(id))) / Gain(Grades.Values.OrderDescending());

    /// <summary>One over the place of the first note of grade 3 among ten; 0 when there is none.</summary>
    public double ReciprocalRank(IReadOnlyList<string> ids) =>
        ids.Take(Cut).Select((id, i) => Grades.GetValueOrDefault(id) == 3 ? 1.0 / (i + 1) : 0).FirstOrDefault(r => r > 0);

    private static JudgedQuestion From(string[] lines, bool isOdd) => new(
        lines[0].Trim(),
        isOdd,
        lines.Where(l => l.StartsWith("- ", StringComparison.Ordinal))
            .SelectMany(l => l[5..].Split(',', StringSplitOptions.TrimEntries).Select(id => KeyValuePair.Create(id, l[2] - '0')))
            .ToImmutableDictionary());

    private static double Gain(IEnumerable<int> grades) => grades.Take(Cut).Select((g, i) => ((1 << g) - 1) / Math.Log2(i + 2)).Sum();
}
