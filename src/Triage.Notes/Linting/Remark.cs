using Triage.Notes.Kinds;

namespace Triage.Notes.Linting;

/// <summary>Something to say of a note that is written correctly.</summary>
/// <param name="At">Id on whose line it stands; null: the note as a whole.</param>
internal sealed record Remark(Note Note, Reference? At, ProblemText Text)
{
    public Problem AsProblem => Linter.At(Note.Place.Path, At?.Line ?? 0, At?.Column ?? 0, Text);
}
