using Triage.Notes.Kinds;

namespace Triage.Notes.Writing;

/// <summary>Writes whole new notes. A note that has a file is changed with <see cref="FrontMatterEdit"/>.</summary>
public static class NoteWriter
{
    /// <summary>The text of a new note's file, with LF line ends. Reading it gives the same record.</summary>
    public static string New(Note note)
    {
        var head = new FieldWriter()
            .Number("format", NoteFormat.Current)
            .Word<NoteKind>("kind", note.Kind)
            .Text("id", note.Id)
            .Text("name", note.Name)
            .Texts("formerly", note.Formerly)
            .Texts("also", note.Also);
        var lines = OfKind(head, note).OnLines.Fields.Select(f => YamlRenderer.Lines(f.Key, f.Value, 0, "\n"));
        return $"---\n{string.Concat(lines)}---\n{note.Body}";
    }

    private static FieldWriter OfKind(FieldWriter fields, Note note) => note switch
    {
        DeviceClass n => WriteMachine.DeviceClass(fields, n),
        Device n => WriteMachine.Device(fields, n),
        PartClass n => WriteMachine.PartClass(fields, n),
        Fault n => WriteFault.Fault(fields, n),
        Finding n => WriteCheck.Finding(fields, n),
        Test n => WriteCheck.Test(fields, n),
        Reset n => WriteCheck.Reset(fields, n),
        Job n => WriteJob.Job(fields, n),
        _ => throw new ArgumentOutOfRangeException(nameof(note)),
    };
}
