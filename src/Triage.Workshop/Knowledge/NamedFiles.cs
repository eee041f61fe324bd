using System.Text.RegularExpressions;
using Triage.Notes.Kinds;

namespace Triage.Workshop.Knowledge;

/// <summary>Files that a note names: photos of a job's log, drawings of a device, and links in its text.</summary>
internal static partial class NamedFiles
{
    /// <summary>As they are named; addresses and ids of notes among the links, too.</summary>
    public static IEnumerable<string> Of(Note note) => Kept(note).Concat(Links.Matches(note.Body).Select(m => Uri.UnescapeDataString(m.Groups[1].Value)));

    /// <summary>Photos and drawings: relative to the book.</summary>
    public static IEnumerable<string> Kept(Note note) => note switch
    {
        Job job => job.Log.SelectMany(e => e.Photos),
        Device device => device.Drawings.Select(d => d.File),
        _ => [],
    };

    [GeneratedRegex(@"\]\(<?([^)\s>]+)")]
    private static partial Regex Links { get; }
}
