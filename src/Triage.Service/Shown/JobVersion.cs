using System.Text;
using Triage.Notes.Kinds;
using Triage.Notes.Writing;
using Triage.Service.Http;
using Triage.Workshop;

namespace Triage.Service.Shown;

/// <summary>
/// The state of a job that a form was made from: a digest of all it says, and how long its log was. A form sent from an older state
/// is not written, so that nobody answers a question that another tab has answered already.
/// </summary>
internal static class JobVersion
{
    public static string Of(Job job) => $"{job.Log.Length}-{EntityTag.Of(Encoding.UTF8.GetBytes(NoteWriter.New(job))).Trim('"')}";

    /// <summary>Null when the form may go through; one that names no version may.</summary>
    public static Refusal? Refuses(Bench now, Job job, Form form) =>
        form.Text("version") is not { } version || version == Of(job) ? null : new(
            RefusalKind.ChangedMeanwhile,
            $"This job changed after this page was made: {Changes(now, job, version)}",
            "Nothing of yours was written, and what you typed is below. Look at what is new, then press the button again.");

    private static string Changes(Bench now, Job job, string version)
    {
        var before = int.TryParse(version.Split('-')[0], out var length) ? length : 0;
        var added = job.Log.Skip(before).Select(e => now.InWords(job, e)).ToList();
        return added.Count > 0 ? $"{string.Join("; ", added)}." : "an entry was taken back, or something agreed or waited for is new.";
    }
}
