using System.Text;
using Triage.Notes.Kinds;
using Triage.Notes.Parsing;
using Triage.Notes.Writing;

namespace Triage.Workshop.Steps;

/// <summary>One log entry as text that can be read again: a job's note with nothing else in it.</summary>
public static class EntryText
{
    public static string Of(LogEntry entry) => NoteWriter.New(new Job("taken-back", "Taken back") { Unit = "any", Log = [entry] });

    /// <summary>Null when the text holds no entry, more than one, or one that cannot be read whole.</summary>
    public static LogEntry? Read(string text)
    {
        var reading = NoteReader.Read("", "taken-back.md", Encoding.UTF8.GetBytes(text.ReplaceLineEndings("\n") + "\n"));
        return reading.Problems.IsEmpty && reading.Note is Job { Log: [var entry] } ? entry : null;
    }
}
