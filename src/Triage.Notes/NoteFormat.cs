namespace Triage.Notes;

/// <summary>Formats of notes. Older ones are read for ever; a newer one is searched only.</summary>
public static class NoteFormat
{
    /// <summary>What new notes are written in.</summary>
    public const int Current = 2;

    /// <summary>Whether a note says a format that is read here.</summary>
    public static bool IsRead(string said) => said is "1" or "2";
}
