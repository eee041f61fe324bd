using System.Collections.Immutable;

namespace Triage.Search.Words;

/// <summary>What was understood of a complaint, and what was not.</summary>
/// <param name="Findings">In the order of the text.</param>
/// <param name="NotUnderstood">Pieces of the text that say something, but nothing that is listed.</param>
/// <param name="Tried">What was tried already; no findings.</param>
public sealed record Recognition(
    ImmutableArray<RecognisedFinding> Findings,
    ImmutableArray<Piece> NotUnderstood,
    ImmutableArray<TriedFix> Tried)
{
    /// <summary>Why the text, or a part of it, was not read; null when all was.</summary>
    public string? Notice { get; init; }
}

/// <param name="Words">As they stand in the text.</param>
public sealed record Piece(string Words, TextSpan Span);

/// <param name="Helped">Null when the text does not say.</param>
public sealed record TriedFix(string Words, TextSpan Span, bool? Helped);
