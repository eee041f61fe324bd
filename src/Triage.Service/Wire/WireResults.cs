using System.Collections.Immutable;
using Triage.Notes;
using Triage.Notes.Kinds;
using Triage.Search.Queries;
using Triage.Workshop.Reviews;
using Triage.Workshop.Steps;

namespace Triage.Service.Wire;

/// <summary>What a step did.</summary>
internal sealed record WireResult(WireJob Job)
{
    /// <summary>Things to know: words that were not understood, a model without a note.</summary>
    public required ImmutableArray<string> Remarks { get; init; }

    /// <summary>What closing the job changed in the knowledge.</summary>
    public required ImmutableArray<WireTaught> Taught { get; init; }
}

/// <summary>The same complaint on a device, before and after a job was closed.</summary>
internal sealed record WireTaught(string Device, string DeviceName, string Fault, string FaultName, double Before, double After)
{
    public static ImmutableArray<WireTaught> Of(ImmutableArray<Taught> taught) =>
        [.. taught.Select(t => new WireTaught(t.Device, t.DeviceName, t.Fault, t.FaultName, t.Before, t.After))];
}

/// <param name="Next">Name of the next step; absent for closed jobs and past the first of many.</param>
internal sealed record WireJobLine(string Id, string Name, JobOutcome? Outcome, string? WaitsFor, string? Next);

/// <param name="Counts">By filter: how many notes each value would leave.</param>
internal sealed record WireFound(int Total, ImmutableArray<WireHit> Hits, ImmutableSortedDictionary<string, ImmutableArray<WireCount>> Counts, string? Notice, string? DidYouMean)
{
    public static WireFound Of(SearchResults found) => new(
        found.Total,
        [.. found.Hits.Select(h => new WireHit(h.Id, h.Kind, h.Title, h.Outcome, h.Fix, [.. h.Passages.Select(p => p.Text)]))],
        found.Counts.ToImmutableSortedDictionary(c => c.Key, c => c.Value.Select(v => new WireCount(v.Value, v.Count)).ToImmutableArray(), StringComparer.Ordinal),
        found.Notice,
        found.DidYouMean);
}

internal sealed record WireHit(string Id, string Kind, string Title, string? Outcome, string? Fix, ImmutableArray<string> Passages);

internal sealed record WireCount(string Value, int Count);

internal sealed record WireNote(string Id, NoteKind Kind, string Name, string Book, string Path, string Body)
{
    public static WireNote Of(Note note) => new(note.Id, note.Kind, note.Name, note.Place.Book, note.Place.Path, note.Body);
}

/// <param name="Writable">False when its book was opened for reading only.</param>
internal sealed record WireNoteText(string Text, string Version, bool Writable);

/// <param name="Written">False when one of the problems is an error.</param>
/// <param name="Version">Of the text on disk now.</param>
internal sealed record WireNoteSaved(bool Written, string? Version, ImmutableArray<WireProblem> Problems);

/// <param name="Now">Version of the text on disk now, to be given back when bringing one back.</param>
/// <param name="Versions">The newest first.</param>
internal sealed record WirePast(string Book, string Path, string Now, bool Writable, ImmutableArray<WireVersion> Versions)
{
    public static WirePast Of(NotePast past) => new(past.Place.Book, past.Place.Path, past.Now, past.Writable, [.. past.Versions.Select(v => new WireVersion(v.Version, v.Until, v.Bytes))]);
}

/// <param name="Until">When it was replaced.</param>
internal sealed record WireVersion(string Version, DateTimeOffset Until, int Bytes);

internal sealed record WireReview(int ClosedJobs, ImmutableArray<WireReviewRow> Rows, ImmutableArray<string> OnHearsay)
{
    public static WireReview Of(Review review) => new(
        review.ClosedJobs,
        [.. review.Rows.Select(r => new WireReviewRow(r.Finding, r.Value, r.Symptom, r.Action, r.ActionName) { Tried = r.Tried, Worked = r.Worked, Held = r.Held, CameBack = r.CameBack, Lower = r.Lower, Upper = r.Upper, Jobs = r.Jobs })],
        review.OnHearsay);
}

/// <summary>One symptom and one reset, swap or fix; interval of worked / tried at 90 %.</summary>
internal sealed record WireReviewRow(string Finding, string Value, string Symptom, string Action, string ActionName)
{
    public required int Tried { get; init; }

    public required int Worked { get; init; }

    public required int Held { get; init; }

    public required int CameBack { get; init; }

    public required double Lower { get; init; }

    public required double Upper { get; init; }

    public required ImmutableArray<string> Jobs { get; init; }
}

internal sealed record WireProblem(string Path, int Line, int Column, Severity Severity, string What, string Instead)
{
    public static WireProblem Of(Problem problem) => new(problem.Path, problem.Line, problem.Column, problem.Severity, problem.What, problem.Instead);
}

/// <param name="Problems">Errors in the notes, and <see cref="Mishaps"/>.</param>
internal sealed record WireHealth(string Status, int Notes, int Jobs, int Problems)
{
    /// <summary>Whether changes of the books' folders are seen; absent when nobody watches them.</summary>
    public required bool? Watching { get; init; }

    /// <summary>Where the program itself failed, and went on without.</summary>
    public required ImmutableArray<WireProblem> Mishaps { get; init; }
}
