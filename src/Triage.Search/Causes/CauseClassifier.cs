using System.Collections.Immutable;
using Microsoft.ML;
using Microsoft.ML.Data;
using Microsoft.ML.Trainers;

namespace Triage.Search.Causes;

/// <summary>What was known of a unit, as words such as "finding=value", and its cause.</summary>
public sealed record CauseExample(ImmutableArray<string> Known, string Cause);

public enum CauseTrainer
{
    /// <summary>Multinomial logistic regression by stochastic dual coordinate ascent.</summary>
    MaximumEntropy,

    /// <summary>One averaged perceptron for each cause against the rest, calibrated after Platt.</summary>
    AveragedPerceptron,
}

/// <summary>
/// A discriminative classifier of causes, to hold the bench's own forecasts against. It explains nothing and is used for nothing else.
/// The same examples and seed give the same classifier.
/// </summary>
public sealed class CauseClassifier
{
    private readonly MLContext context;
    private readonly Dictionary<string, int> places;
    private readonly SchemaDefinition shape;
    private readonly ITransformer model;
    private readonly ImmutableArray<string> causes;

    private CauseClassifier(IReadOnlyList<CauseExample> examples, CauseTrainer trainer, int seed)
    {
        context = new(seed);
        places = examples.SelectMany(e => e.Known).Distinct().Order(StringComparer.Ordinal).Select((word, i) => (word, i)).ToDictionary(p => p.word, p => p.i, StringComparer.Ordinal);
        shape = SchemaDefinition.Create(typeof(Row));
        shape[nameof(Row.Features)].ColumnType = new VectorDataViewType(NumberDataViewType.Single, Math.Max(1, places.Count));
        causes = [.. examples.Select(e => e.Cause).Distinct().Order(StringComparer.Ordinal)];
        var rows = context.Data.LoadFromEnumerable(examples.Select(e => Of(e.Known, e.Cause)), shape);
        var keyed = context.Transforms.Conversion.MapValueToKey("Label", nameof(Row.Cause), keyOrdinality: Microsoft.ML.Transforms.ValueToKeyMappingEstimator.KeyOrdinality.ByValue);
        model = keyed.Append(Trainer(trainer)).Fit(rows);
    }

    /// <summary>Null when there is nothing to tell apart.</summary>
    public static CauseClassifier? Train(IReadOnlyList<CauseExample> examples, CauseTrainer trainer, int seed) =>
        examples.DistinctBy(e => e.Cause).Skip(1).Any() ? new(examples, trainer, seed) : null;

    /// <summary>P(cause | what is known) for each unit, over the causes of the examples; each sums to 1.</summary>
    public IReadOnlyList<ImmutableDictionary<string, double>> Chances(IEnumerable<ImmutableArray<string>> units)
    {
        var scored = model.Transform(context.Data.LoadFromEnumerable(units.Select(known => Of(known, causes[0])), shape));
        return [.. scored.GetColumn<float[]>("Score").Select(Normalised)];
    }

    private ImmutableDictionary<string, double> Normalised(float[] scores)
    {
        var sum = scores.Sum(s => (double)s);
        return causes.Select((c, i) => KeyValuePair.Create(c, sum > 0 ? scores[i] / sum : 1.0 / scores.Length)).ToImmutableDictionary(StringComparer.Ordinal);
    }

    private IEstimator<ITransformer> Trainer(CauseTrainer trainer)
    {
        var trainers = context.MulticlassClassification.Trainers;
        return trainer switch
        {
            CauseTrainer.MaximumEntropy => trainers.SdcaMaximumEntropy(new SdcaMaximumEntropyMulticlassTrainer.Options { NumberOfThreads = 1, MaximumNumberOfIterations = 50, Shuffle = false }),
            CauseTrainer.AveragedPerceptron => trainers.OneVersusAll(context.BinaryClassification.Trainers.AveragedPerceptron(numberOfIterations: 20)),
        };
    }

    /// <summary>Words never met are left out.</summary>
    private Row Of(ImmutableArray<string> known, string cause)
    {
        var features = new float[Math.Max(1, places.Count)];
        foreach (var word in known)
        {
            if (places.TryGetValue(word, out var place))
                features[place] = 1;
        }

        return new() { Cause = cause, Features = features };
    }

    private sealed class Row
    {
        public string Cause { get; set; } = "";

        public float[] Features { get; set; } = [];
    }
}
