namespace Triage.Notes.Parsing;

/// <summary>Leaves the tree reader at the first thing that cannot be read; never leaves <see cref="NoteReader"/>.</summary>
internal sealed class NoteSyntaxException(int line, int column, ProblemText text) : Exception(text.What)
{
    public int Line => line;

    public int Column => column;

    public ProblemText Text => text;
}
