using Triage.Notes;
using Triage.Notes.Kinds;
using Triage.Notes.Parsing;
using Triage.Notes.Writing;

namespace Triage.Workshop.Steps;

/// <summary>A job's note as it is once the job is closed.</summary>
internal static class ClosedNote
{
    public static NoteText Of(NoteText text, Job job, CloseRequest request, DateTimeOffset now)
    {
        if (!request.Causes.IsEmpty)
            text = text.Set(["causes"], new YamlList([.. request.Causes.Select(JobYaml.Of)], Block: true));
        if (!request.Damage.IsEmpty)
            text = text.Set(["damage"], YamlValue.Of(request.Damage.AsEnumerable()));
        if (request.Minutes is { } minutes)
            text = text.Set(["minutes"], YamlValue.Of(minutes));
        if (!string.IsNullOrWhiteSpace(request.Lesson))
            text = text.SetBody(job.Body.Length == 0 ? request.Lesson.Trim() + "\n" : $"{job.Body.TrimEnd()}\n\n{request.Lesson.Trim()}\n");
        return text.Remove(["waits-for"]).Set(["outcome"], YamlValue.Of(Words.Of(request.Outcome))).Set(["closed"], YamlValue.Of(now));
    }
}
