using Triage.Notes.Parsing;

namespace Triage.Workshop.Steps;

/// <summary>A file's text after an edit, or why there is none.</summary>
internal sealed record TextEdit(NoteText? Text, Refusal? Refused)
{
    public static implicit operator TextEdit(NoteText text) => new(text, null);

    public static implicit operator TextEdit(Refusal refused) => new(null, refused);
}
