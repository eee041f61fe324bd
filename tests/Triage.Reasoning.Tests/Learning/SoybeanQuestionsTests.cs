using Triage.Reasoning.Learning;
using Xunit;

namespace Triage.Reasoning.Tests.Learning;

/// <summary>
/// From three known attributes ask one at a time until the likeliest cause has 0.9; an attribute that was not observed costs a
/// question and tells nothing. Starts and the greedy information-gain baseline are those beside the data.
/// </summary>
[Trait("run", "thorough")]
public class SoybeanQuestionsTests
{
    static readonly SoybeanCases Cases = SoybeanCases.Read();

    [Fact]
    public void ExpectedPosterior_AsksFewerQuestionsThanInformationGainOverNaiveBayes()
    {
        Asked[] asked = [.. Enumerable.Range(0, 10).SelectMany(Questions)];

        double questions = asked.Average(a => a.Questions), accuracy = asked.Average(a => a.Right ? 1.0 : 0);
        TestContext.Current.TestOutputHelper!.WriteLine($"{questions:F3} questions, {accuracy:F4} right");
        Assert.InRange(questions, 0, asked.Average(a => a.Baseline));
        Assert.InRange(accuracy, asked.Average(a => a.BaselineRight ? 1.0 : 0), 1);
    }

    static IEnumerable<Asked> Questions(int fold)
    {
        SoybeanRanking ranking = SoybeanJobs.Ranking(Cases, fold);
        return SoybeanCases.Starts().Select((start, i) => (start, i)).Where(item => Cases.Rows[item.i].Fold == fold).Select(item => Ask(ranking, item.i, item.start));
    }

    static Asked Ask(SoybeanRanking ranking, int row, QuestionStart start)
    {
        var (cause, values, _) = Cases.Rows[row];
        List<CheckedFinding> seen = [.. start.Attributes.Select(a => new CheckedFinding(a, values[Array.IndexOf(Cases.Attributes, a)]))];
        List<string> open = [.. Cases.Attributes.Except(start.Attributes)];
        int questions = 0;
        double[] posterior = ranking.Posterior(seen);
        for (; posterior.Max() < 0.9 && open.Count > 0; questions++)
        {
            string next = open.MaxBy(attribute => ranking.Ask(seen, attribute, Cases.Levels[Array.IndexOf(Cases.Attributes, attribute)]).Sum(answer => answer.Chance * Worth(answer.Posterior)))!;
            open.Remove(next);
            string value = values[Array.IndexOf(Cases.Attributes, next)];
            if (value == "") continue;
            seen.Add(new(next, value));
            posterior = ranking.Posterior(seen);
        }
        string answer = Cases.Classes[Array.IndexOf(posterior, posterior.Max())];
        return new(questions, answer == cause, start.BaselineQuestions, start.BaselineAnswer == cause);
    }

    /// <summary>Negative entropy.</summary>
    static double Worth(double[] posterior) => posterior.Sum(p => p > 0 ? p * Math.Log(p) : 0);

    sealed record Asked(int Questions, bool Right, int Baseline, bool BaselineRight);
}
