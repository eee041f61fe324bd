using System.Collections.Immutable;
using Microsoft.ML;
using Microsoft.ML.Data;
using Microsoft.ML.Trainers;
using Triage.Notes.Kinds;

namespace Triage.Search.Tests.Words;

/// <summary>
/// Suggests findings from the words of past complaints: one linear classifier for each finding value that has enough jobs. It stands
/// here and not in the product because it reads complaints no better than phrasings alone (<see cref="ClassifierWorthTests"/>).
/// </summary>
internal sealed class ComplaintClassifier
{
    /// <summary>Closed jobs with a complaint below which nothing is trained; set by hand.</summary>
    public const int FewestJobs = 100;

    /// <summary>Jobs with a finding value, and without it, below which it is left out; set by hand.</summary>
    public const int FewestOfEach = 20;

    private const double Worth = 0.6;

    private readonly MLContext context;
    private readonly ITransformer words;
    private readonly ImmutableArray<(string Finding, string Value, ITransformer Model)> models;

    private ComplaintClassifier(MLContext context, ITransformer words, ImmutableArray<(string, string, ITransformer)> models)
    {
        this.context = context;
        this.words = words;
        this.models = models;
    }

    /// <summary>Finding values that it can suggest, as finding=value.</summary>
    public ImmutableArray<string> Suggestable => [.. models.Select(m => $"{m.Finding}={m.Value}")];

    /// <summary>The same jobs and seed give the same classifier. Null when there are too few jobs.</summary>
    /// <param name="jobs">Open ones and ones without a complaint are left out.</param>
    public static ComplaintClassifier? Train(IEnumerable<Job> jobs, int seed)
    {
        var closed = jobs.Where(j => !j.IsOpen && !string.IsNullOrWhiteSpace(j.Complaint)).OrderBy(j => j.Id, StringComparer.Ordinal).ToList();
        var seen = closed.ConvertAll(j => j.Log.OfType<Saw>().Select(s => (s.Finding, s.Value)).ToHashSet());
        var enough = seen.SelectMany(s => s).CountBy(s => s)
            .Where(s => s.Value >= FewestOfEach && closed.Count - s.Value >= FewestOfEach)
            .Select(s => s.Key).OrderBy(s => s.Finding, StringComparer.Ordinal).ThenBy(s => s.Value, StringComparer.Ordinal).ToList();
        if (closed.Count < FewestJobs || enough.Count == 0)
        {
            return null;
        }

        var context = new MLContext(seed);
        var complaints = context.Data.LoadFromEnumerable(closed.ConvertAll(j => new Complaint { Text = j.Complaint }));
        var words = context.Transforms.Text.FeaturizeText(nameof(Featured.Features), nameof(Complaint.Text)).Fit(complaints);
        var features = words.Transform(complaints).GetColumn<float[]>(nameof(Featured.Features)).Select(f => new Featured { Features = f }).ToList();
        var size = SchemaDefinition.Create(typeof(Featured));
        size[nameof(Featured.Features)].ColumnType = new VectorDataViewType(NumberDataViewType.Single, features[0].Features.Length);
        var models = enough.ConvertAll(label =>
        {
            for (var i = 0; i < features.Count; i++)
            {
                features[i].Label = seen[i].Contains(label);
            }

            var trainer = context.BinaryClassification.Trainers.SdcaLogisticRegression(
                new SdcaLogisticRegressionBinaryTrainer.Options { NumberOfThreads = 1, MaximumNumberOfIterations = 50, Shuffle = false });
            return (label.Finding, label.Value, (ITransformer)trainer.Fit(context.Data.LoadFromEnumerable(features, size)));
        });
        return new(context, words, [.. models]);
    }

    /// <summary>Finding values that were more often recorded than not for such words, likeliest first.</summary>
    public ImmutableArray<Suggestion> Suggest(string complaint)
    {
        var featured = words.Transform(context.Data.LoadFromEnumerable([new Complaint { Text = complaint }]));
        return
        [
            .. models
                .Select(m => new Suggestion(m.Finding, m.Value, m.Model.Transform(featured).GetColumn<float>("Probability").First()))
                .Where(s => s.Probability >= Worth)
                .OrderByDescending(s => s.Probability),
        ];
    }

    private sealed class Complaint
    {
        public string Text { get; set; } = "";
    }

    private sealed class Featured
    {
        public bool Label { get; set; }

        public float[] Features { get; set; } = [];
    }
}

/// <param name="Probability">0 … 1, that the finding was recorded for such words.</param>
internal sealed record Suggestion(string Finding, string Value, double Probability);
