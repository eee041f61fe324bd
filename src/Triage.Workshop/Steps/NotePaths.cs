using System.Globalization;
using Triage.Notes.Kinds;

namespace Triage.Workshop.Steps;

/// <summary>Where the bench puts the notes it writes itself.</summary>
internal static class NotePaths
{
    public static string Of(Job job) => $"jobs/{(job.Opened ?? default).Year.ToString("0000", CultureInfo.InvariantCulture)}/{job.Id}.md";

    public static string Of(Note note) => note is Job job ? Of(job) : $"{FolderOf(note.Kind)}/{note.Id}.md";

    private static string FolderOf(NoteKind kind) => kind switch
    {
        NoteKind.DeviceClass => "classes",
        NoteKind.Device => "devices",
        NoteKind.PartClass => "parts",
        NoteKind.Fault => "faults",
        NoteKind.Finding => "findings",
        NoteKind.Test => "tests",
        NoteKind.Reset => "resets",
        NoteKind.Job => "jobs",
    };
}
