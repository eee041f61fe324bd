using System.Collections.Immutable;
using System.Globalization;
using Triage.Workshop.Answers.Wording;

namespace Triage.Workshop.Reviews;

/// <summary>What the scores of forecasts say.</summary>
internal static class ForecastsInWords
{
    public static IEnumerable<string> Of(ImmutableArray<ForecasterScore> scores)
    {
        var bench = scores[0].Score;
        var rates = scores[1].Score;
        yield return string.Create(CultureInfo.InvariantCulture, $"Base rates lose {rates.LogLoss:0.00} a job, the bench {bench.LogLoss:0.00}: what is seen of a machine makes its true cause {Math.Exp(rates.LogLoss - bench.LogLoss):0.#} times as likely on average.");
        foreach (var other in scores.Skip(2).Where(s => s.Score.LogLoss < bench.LogLoss))
            yield return $"{Sentence.Upper(other.Name)} forecast these jobs better. It knows nothing but the jobs; where it is ahead, jobs say more than the notes do: look at the notes' numbers.";
        if (bench.CalibrationError > Off)
            yield return string.Create(CultureInfo.InvariantCulture, $"What the bench was sure of and how often it was right differ by {bench.CalibrationError:P0} on average.");
    }

    /// <summary>A difference of chances worth a word; set by hand.</summary>
    private const double Off = 0.1;
}
