namespace Triage.Notes.Kinds;

/// <summary>A probability as a note says it: a frequency word or a number, with how much stands behind it.</summary>
/// <param name="Probability">0 … 1.</param>
/// <param name="Weight">Pseudo-jobs behind it; infinite for "exactly".</param>
/// <param name="Word">The frequency word, when it was one.</param>
/// <param name="Source">Published source, "common practice, no source" or "from memory"; null when the note does not say.</param>
public sealed record Chance(double Probability, double Weight, string? Word = null, string? Source = null);
