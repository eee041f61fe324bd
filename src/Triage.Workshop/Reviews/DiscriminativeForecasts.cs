using System.Collections.Immutable;
using Triage.Reasoning.Learning;
using Triage.Search.Causes;

namespace Triage.Workshop.Reviews;

/// <summary>
/// The same jobs forecast by a trained classifier that knows findings, device and class. It is trained anew whenever the jobs before have
/// grown by a quarter. A cause it has not met gets what base rates say, with the chance that something new comes up: distinct causes over
/// jobs and distinct causes (Witten and Bell 1991).
/// </summary>
internal sealed class DiscriminativeForecasts(ImmutableArray<string> classes, ImmutableArray<JobRecord> inOrder, ImmutableArray<Forecast> forecasts, CancellationToken stop)
{
    /// <summary>Jobs before the first training, growth between trainings, and jobs trained on at most; set by hand.</summary>
    private const int Fewest = 20, Most = 5_000;

    private const double Growth = 1.25;

    private const int Seed = 1;

    public IEnumerable<Prediction> By(CauseTrainer trainer)
    {
        var at = inOrder.Select((record, i) => (record.Id, i)).ToDictionary(p => p.Id, p => p.i, StringComparer.Ordinal);
        var next = 0;
        while (next < forecasts.Length)
        {
            stop.ThrowIfCancellationRequested();
            var known = at[forecasts[next].Job];
            var until = known < Fewest ? Fewest : (int)Math.Ceiling(known * Growth);
            ImmutableArray<Forecast> block = [.. forecasts.Skip(next).TakeWhile(f => at[f.Job] < until)];
            foreach (var prediction in Block(block, known < Fewest ? [] : Examples(known), trainer, at))
                yield return prediction;
            next += block.Length;
        }
    }

    private IEnumerable<Prediction> Block(ImmutableArray<Forecast> block, ImmutableArray<CauseExample> examples, CauseTrainer trainer, Dictionary<string, int> at)
    {
        if (CauseClassifier.Train(examples, trainer, Seed) is not { } classifier)
            return block.Select(f => f.BaseRates);
        var distinct = examples.Select(e => e.Cause).Distinct().Count();
        var fresh = (double)distinct / (distinct + examples.Length);
        var chances = classifier.Chances(block.Select(f => KnownOf(inOrder[at[f.Job]])));
        return block.Zip(chances, (f, p) => f.BaseRates with
        {
            Probabilities = [.. classes.Select((c, i) => (1 - fresh) * p.GetValueOrDefault(c) + fresh * f.BaseRates.Probabilities[i])],
        });
    }

    private ImmutableArray<CauseExample> Examples(int known) =>
        [.. inOrder.Take(known).TakeLast(Most).Where(r => !r.Causes.IsEmpty && r.Weight > 0).Select(r => new CauseExample(KnownOf(r), Cause(r)))];

    private string Cause(JobRecord record)
    {
        var likeliest = record.Causes.MaxBy(c => c.Chance)!;
        return likeliest.WasNew || !classes.Contains(likeliest.Fault) ? Prequential.Unlisted : likeliest.Fault;
    }

    private static ImmutableArray<string> KnownOf(JobRecord record) => [.. record.Levels, .. record.Checked.Select(c => $"{c.Finding}={c.Value}")];
}
