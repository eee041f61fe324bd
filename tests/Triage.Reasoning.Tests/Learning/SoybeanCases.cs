using System.Globalization;

namespace Triage.Reasoning.Tests.Learning;

/// <summary>
/// 683 diagnosed cases of 19 diseases (Michalski and Chilausky 1980; UCI "Soybean (Large)"), with the folds and baselines
/// described beside the data. An empty cell was not observed.
/// </summary>
public sealed class SoybeanCases
{
    public string[] Attributes { get; }

    /// <summary>Declared levels of each attribute.</summary>
    public string[][] Levels { get; }

    public string[] Classes { get; }

    public (string Class, string[] Values, int Fold)[] Rows { get; }

    SoybeanCases(string[] attributes, string[][] levels, (string Class, string[] Values, int Fold)[] rows)
    {
        (Attributes, Levels, Rows) = (attributes, levels, rows);
        Classes = [.. rows.Select(row => row.Class).Distinct().Order(StringComparer.Ordinal)];
    }

    public static SoybeanCases Read()
    {
        string[][] cases = Table("soybean.csv");
        var levels = Table("soybean-levels.csv").Skip(1).ToDictionary(row => row[0], row => row[2].Split(' '));
        int[] folds = [.. Table("soybean-folds.csv").Skip(1).Select(row => int.Parse(row[1], CultureInfo.InvariantCulture))];
        string[] attributes = cases[0][1..];
        return new(
            attributes,
            [.. attributes.Select(attribute => levels[attribute])],
            [.. cases.Skip(1).Select((row, i) => (row[0], row[1..], folds[i]))]);
    }

    public int ClassOf((string Class, string[] Values, int Fold) row) => Array.IndexOf(Classes, row.Class);

    /// <summary>top-1, top-3, log-loss, Brier, ECE of a model over all 683 rows.</summary>
    public static double[] Baseline(string model) =>
        [.. Table("soybean-baselines.csv").Single(row => row[0] == model && row[1] == "pooled")[3..].Select(x => double.Parse(x, CultureInfo.InvariantCulture))];

    /// <summary>Where questioning starts, one per row.</summary>
    public static QuestionStart[] Starts() =>
        [.. Table("soybean-questions.csv").Skip(1).Select(row => new QuestionStart(row[3].Split(' '), int.Parse(row[5], CultureInfo.InvariantCulture), row[7]))];

    static string[][] Table(string name) =>
        [.. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "data", name)).Select(line => line.Split(','))];
}

/// <summary>Three attributes known at the start, and what greedy information gain over naive Bayes then needed and answered.</summary>
public sealed record QuestionStart(string[] Attributes, int BaselineQuestions, string BaselineAnswer);
