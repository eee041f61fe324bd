using System.Collections.Immutable;
using System.Globalization;
using Triage.Notes.Kinds;

namespace Triage.Tools.Soybean;

/// <summary>Questions asked and right names, over all cases, beside the greedy baseline that starts from the same attributes.</summary>
internal static class QuestionTable
{
    /// <summary>One for each case of some folds.</summary>
    public static ImmutableArray<(Questioned Ours, Questioned Greedy)> Of(SoybeanCases cases, string data, IEnumerable<int> folds)
    {
        var starts = File.ReadLines(Path.Combine(data, "soybean-questions.csv")).Skip(1).Select(line => line.Split(',')).ToList();
        var jobs = starts.ToDictionary(row => $"soybean-{int.Parse(row[0], CultureInfo.InvariantCulture) + 1:00000}", StringComparer.Ordinal);
        return [.. folds.AsParallel().AsOrdered().SelectMany(fold =>
        {
            var questions = new Questions(cases, cases.Folds[fold]);
            return cases.Folds[fold].Select(job => (questions.Ask(job, jobs[job.Id][3].Split(' ')), Greedy(jobs[job.Id]))).ToList();
        })];
    }

    public static void Print(TextWriter to, SoybeanCases cases, string data)
    {
        var all = Of(cases, data, Enumerable.Range(0, cases.Folds.Length));
        Line(to, "the planner, dependent findings", [.. all.Select(a => a.Ours)]);
        Line(to, "information gain, naive Bayes", [.. all.Select(a => a.Greedy)]);
    }

    private static Questioned Greedy(string[] row) => new(int.Parse(row[5], CultureInfo.InvariantCulture), row[7] == row[2]);

    private static void Line(TextWriter to, string name, Questioned[] asked) => to.WriteLine(FormattableString.Invariant(
        $"{name,-34} {asked.Length} cases, {asked.Average(a => a.Asked):F3} questions, {asked.Average(a => a.Right ? 1.0 : 0):F4} right"));
}
