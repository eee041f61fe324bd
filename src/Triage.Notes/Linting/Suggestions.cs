using System.Collections.Concurrent;
using Triage.Notes.Kinds;

namespace Triage.Notes.Linting;

/// <summary>Ids that somebody may have meant. One missing note is often named in many others, so each answer is kept.</summary>
internal sealed class Suggestions(NoteIndex index)
{
    private readonly ConcurrentDictionary<(ReferenceKind, string), string?> _nearest = new();
    private readonly ConcurrentDictionary<ReferenceKind, string[]> _candidates = new();

    /// <summary>The nearest id of a kind; null when none is near.</summary>
    public string? For(ReferenceKind kind, string id) =>
        _nearest.GetOrAdd((kind, id), key => Nearest.To(key.Item2, _candidates.GetOrAdd(key.Item1, k => [.. Candidates(k)])));

    private IEnumerable<string> Candidates(ReferenceKind kind) => kind switch
    {
        ReferenceKind.Fix => index.Fixes,
        ReferenceKind.Action => index.Fixes.Concat(index.Notes.OfType<Reset>().Select(r => r.Id)),
        ReferenceKind.Step => index.Fixes.Concat(index.Notes.Where(n => References.Fits(kind, n)).Select(n => n.Id)),
        ReferenceKind.Role => index.Roles,
        ReferenceKind.Protect => index.ProtectSteps,
        ReferenceKind.Access => index.AccessSteps,
        _ => index.Notes.Where(n => References.Fits(kind, n)).Select(n => n.Id),
    };
}
