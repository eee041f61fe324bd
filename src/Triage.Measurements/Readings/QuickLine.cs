using System.Collections.Immutable;

namespace Triage.Measurements.Readings;

/// <summary>A quick line as written, with what was understood of it and what was not.</summary>
/// <param name="Text">As written; nothing is lost.</param>
/// <param name="Pieces">In the order of the text.</param>
/// <param name="Readings">Readings put together from terminal, value and conditions.</param>
/// <param name="NotUnderstood">Stretches that none of the pieces covers, little words left out.</param>
/// <param name="Problems">Values that could not be trusted as read, with what to write instead.</param>
public sealed record QuickLine(
    string Text,
    ImmutableArray<QuickPiece> Pieces,
    ImmutableArray<Reading> Readings,
    ImmutableArray<TextSpan> NotUnderstood,
    ImmutableArray<MeasurementProblem> Problems)
{
    public IEnumerable<QuickPiece> Of(QuickKind kind) => Pieces.Where(p => p.Kind == kind);

    /// <summary>What the first piece of that kind says; null when there is none.</summary>
    public string? Says(QuickKind kind) => Of(kind).FirstOrDefault()?.Says;
}
