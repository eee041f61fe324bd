using System.Collections.Immutable;
using Triage.Notes;
using Triage.Notes.Kinds;
using Triage.Notes.Parsing;
using Triage.Notes.Writing;

namespace Triage.Workshop.Steps;

/// <summary>Fields of a job as its note writes them.</summary>
internal static class JobYaml
{
    public static YamlValue Of(Consent consent) => Fields(
        ("spending-limit", consent.SpendingLimit is { } limit ? YamlValue.Of(limit) : null),
        ("may-erase", consent.MayErase is { } erase ? YamlValue.Of(erase) : null),
        ("originals-back", consent.OriginalsBack is { } back ? YamlValue.Of(back) : null));

    public static YamlValue Of(Waiting waiting) => Fields(
        ("for", YamlValue.Of(waiting.For)),
        ("until", waiting.Until is { } until ? YamlValue.Of(until) : null));

    public static YamlValue Of(FollowUp followUp) => Fields(
        ("on", YamlValue.Of(followUp.On)),
        ("came-back", YamlValue.Of(followUp.CameBack)),
        ("note", followUp.Note is { } note ? YamlValue.Of(note) : null));

    private static YamlValue Of(FoundCause cause) => Fields(
        ("fault", YamlValue.Of(cause.Fault)),
        ("grade", YamlValue.Of(Words.Of(cause.Grade))),
        ("chance", cause.Chance < 1 ? YamlValue.Of(cause.Chance) : null),
        ("new", cause.WasNew ? YamlValue.Of(true) : null));

    public static NoteText Closed(NoteText text, Job job, CloseRequest request, DateTimeOffset now)
    {
        if (!request.Causes.IsEmpty)
            text = text.Set(["causes"], new YamlList([.. request.Causes.Select(Of)], Block: true));
        if (!request.Damage.IsEmpty)
            text = text.Set(["damage"], YamlValue.Of(request.Damage.AsEnumerable()));
        if (request.Minutes is { } minutes)
            text = text.Set(["minutes"], YamlValue.Of(minutes));
        if (!string.IsNullOrWhiteSpace(request.Lesson))
            text = text.SetBody(job.Body.Length == 0 ? request.Lesson.Trim() + "\n" : $"{job.Body.TrimEnd()}\n\n{request.Lesson.Trim()}\n");
        return text.Remove(["waits-for"]).Set(["outcome"], YamlValue.Of(Words.Of(request.Outcome))).Set(["closed"], YamlValue.Of(now));
    }

    private static YamlFields Fields(params ImmutableArray<(string Key, YamlValue? Value)> fields) =>
        new([.. fields.Where(f => f.Value is not null).Select(f => (f.Key, f.Value!))]);
}
