using System.Collections.Immutable;
using Triage.Measurements.Readings;
using Triage.Notes.Kinds;
using Triage.Workshop.Knowledge;
using Triage.Workshop.Readings;
using QuickLine = Triage.Notes.Kinds.QuickLine;

namespace Triage.Workshop.Steps;

/// <summary>
/// The whole job as plain methods. Each writes the job's note before it returns, and the next answer knows of it; each says
/// why when it refuses, and then nothing was written.
/// </summary>
public sealed class JobSteps
{
    private readonly LiveBooks bench;
    private readonly Drawer drawer;
    private readonly JobNotes notes;

    private readonly JobPhotos photos;

    internal JobSteps(LiveBooks bench, Drawer drawer)
    {
        (this.bench, this.drawer) = (bench, drawer);
        notes = new(bench);
        photos = new(bench, notes);
    }

    private DateTimeOffset Now => bench.Clock.GetLocalNow();

    /// <summary>A complaint without taking anything in: nothing is written.</summary>
    /// <param name="machine">Device or class, by id or name; may be empty when the complaint names it.</param>
    /// <param name="seen">Findings told beside the complaint, which may then be empty.</param>
    public Asking Ask(string machine, string complaint, ImmutableArray<SeenFinding> seen = default) =>
        new TakingIn(bench.Current, Now).Ask(machine, complaint, seen.IsDefault ? [] : seen);

    /// <summary>What is known of the machine that is meant; null when no note knows its kind.</summary>
    public DeviceScope? Meant(string machine, string complaint = "") =>
        MachineNames.Resolve(machine, complaint, Book) is { Class: { } kind } meant ? DeviceScope.Of(Book, meant.Device, kind) : null;

    /// <summary>Takes a machine in: the complaint is kept as said, recognised findings are the first entries.</summary>
    public StepResult TakeIn(TakeInRequest request)
    {
        var taken = new TakingIn(bench.Current, Now).TakeIn(request);
        return taken.Refused is not null || taken.Job is null ? taken : notes.Create(taken.Job) with { Remarks = taken.Remarks };
    }

    /// <summary>
    /// One line at eleven at night: kept as written, and what it says with certainty recorded beside it as entries of their own,
    /// each of which can be taken back.
    /// </summary>
    public StepResult Line(string job, string text, ImmutableArray<string> photos = default)
    {
        if (string.IsNullOrWhiteSpace(text))
            return Refuse(WorkshopRefusals.NothingSaid("line"));
        if (text.Length > Limits.Line)
            return Refuse(WorkshopRefusals.TooLong("line", text.Length, Limits.Line));
        var line = QuickReading.Read(text);
        var scope = Book.Find<Job>(job) is { } known ? bench.Current.ScopeOf(known) : null;
        var read = new QuickLineEntries(scope, Book, Now).Of(line);
        var written = notes.Append(job, [new QuickLine(Now, text) { Photos = photos.IsDefault ? [] : photos }, .. read]);
        return written.Refused is not null || written.Job is not { } after ? written
            : written with { Remarks = [.. written.Remarks, .. QuickLineRead.Remarks(line), .. read.Select(e => QuickLineRead.Recorded(bench.Current, after, e))] };
    }

    /// <summary>A line with a photo beside it.</summary>
    /// <param name="photo">JPEG, PNG or WebP, up to <see cref="Limits.Photo"/> bytes.</param>
    public StepResult Line(string job, string text, ReadOnlyMemory<byte> photo) => photos.Keep(job, photo, path => Line(job, text, photos: [path]));

    /// <summary>A photo put to something recorded.</summary>
    /// <param name="entry">Index in the log, 0 the oldest.</param>
    /// <param name="photo">JPEG, PNG or WebP, up to <see cref="Limits.Photo"/> bytes.</param>
    public StepResult Photo(string job, int entry, ReadOnlyMemory<byte> photo) => photos.Keep(job, photo, path => photos.Attach(job, entry, path));

    /// <summary>A photo that the job's log names, by the name of its file; null when there is none.</summary>
    public byte[]? PhotoOf(string job, string name) => photos.Find(job, name);

    /// <summary>A finding seen with a value; "not seen" is its normal value.</summary>
    /// <param name="sure">Chance that it is so, above 0 to 1; null when nobody doubts it.</param>
    public StepResult Saw(string job, string finding, string value, ImmutableArray<string> when = default, double? watchedMinutes = null, double? sure = null, bool comesAndGoes = false) =>
        sure is not (null or > 0 and <= 1) ? Refuse(WorkshopRefusals.NotSure(sure.Value))
        : Known<Finding>("finding", finding) is { } refused ? Refuse(refused)
        : ValueOf(finding, value) is { } wrong ? Refuse(wrong)
        : notes.Append(job, new Saw(Now, finding, value) { When = when.IsDefault ? [] : when, WatchedMinutes = watchedMinutes, Sure = sure < 1 ? sure : null, ComesAndGoes = comesAndGoes });

    /// <summary>A test done, with its outcome: a value of the finding it reveals, or an outcome of its own.</summary>
    public StepResult Tested(string job, string test, string outcome) =>
        Known<Test>("test", test) is { } refused ? Refuse(refused)
        : OutcomeOf(test, outcome) is { } wrong ? Refuse(wrong)
        : notes.Append(job, new Tested(Now, test, outcome));

    /// <summary>A round gone through: what was seen of each thing that one looked at. A thing left out was not looked at.</summary>
    /// <param name="rows">At least one.</param>
    public StepResult Round(string job, string round, ImmutableArray<SeenFinding> rows)
    {
        if (round != AlwaysThere.LookItOver && Known<Test>("test", round) is { } unknown)
            return Refuse(unknown);
        if (rows.IsDefaultOrEmpty)
            return Refuse(WorkshopRefusals.NothingSaid("round"));
        var refused = rows.Select(r => Book.Find<Test>(round) is { } known && !known.Round.Contains(r.Finding) ? WorkshopRefusals.NoSuch("row of the round", r.Finding, known.Round)
            : Known<Finding>("finding", r.Finding) ?? ValueOf(r.Finding, r.Value)).OfType<Refusal>().FirstOrDefault();
        return refused is not null ? Refuse(refused) : notes.Append(job, [new RoundDone(Now, round), .. rows.Select(r => new Saw(Now, r.Finding, r.Value))]);
    }

    /// <summary>The same as typed.</summary>
    /// <param name="rows"><c>finding=value</c>, one for each thing looked at.</param>
    public StepResult Round(string job, string round, IEnumerable<string> rows) =>
        TypedPairs.Rows(rows) is { } read ? Round(job, round, read) : Refuse(WorkshopRefusals.NoPair("hum=yes crackle=no"));

    /// <summary>A step that was offered and not done: it cannot be told, or is passed over. It is not offered again and says nothing of the machine.</summary>
    public StepResult Skip(string job, string step, SkipReason why) =>
        string.IsNullOrWhiteSpace(step) ? Refuse(WorkshopRefusals.NothingSaid("step")) : notes.Append(job, new Skipped(Now, step, why));

    /// <summary>A protect step done, or found not to be possible.</summary>
    public StepResult Secured(string job, string protect, bool done) =>
        Book.Find<Job>(job) is { } known && bench.Current.ScopeOf(known) is { } scope && scope.Class.Protect.All(p => p.Id != protect)
            ? Refuse(WorkshopRefusals.NoSuch("protect step", protect, Nearest(protect, scope.Class.Protect.Select(p => p.Id))))
            : notes.Append(job, new Secured(Now, protect, done));

    /// <summary>The owner has left: what only he knows costs a call from now on.</summary>
    public StepResult CloseCounter(string job) => notes.Append(job, new CounterClosed(Now));

    /// <summary>What was told of the machine's build; what was told before and is not named again stays.</summary>
    public StepResult TellBuild(string job, Build build) =>
        Book.Find<Job>(job) is { } known && bench.Current.ScopeOf(known) is { } scope && BuildCheck.Refuses(build, scope.Class) is { } refused
            ? Refuse(refused)
            : notes.SetBuild(job, build);

    /// <summary>The same as typed.</summary>
    /// <param name="traits"><c>trait=value</c> or <c>trait=value,value</c>.</param>
    public StepResult TellBuild(string job, IEnumerable<string> traits) =>
        TypedPairs.BuildOf(traits) is { IsUntold: false } read ? TellBuild(job, read) : Refuse(WorkshopRefusals.NoPair("supply=mains,cells"));

    /// <summary>A reading, as typed.</summary>
    public StepResult Reading(string job, Read reading) =>
        ReadingCheck.Refuses(reading) is { } refused ? Refuse(refused) : notes.Append(job, reading with { At = Now });

    /// <summary>A reset tried. One that erases is refused until the owner has agreed.</summary>
    public StepResult Reset(string job, string reset, Effect effect) =>
        Known<Reset>("reset", reset) is { } refused ? Refuse(refused)
        : notes.Append(job, new ResetTried(Now, reset, effect), known => EraseRefusal(known, reset));

    /// <summary>Whether what worked still worked later: after power loss, a soak, some days.</summary>
    public StepResult Held(string job, string action, bool stillWorks, string? after = "power-loss") =>
        notes.Append(job, new Held(Now, action, stillWorks, after));

    /// <summary>A fix done.</summary>
    public StepResult Fixed(string job, string fix, Effect effect, bool? testedBefore = null) =>
        KnownFix(fix) is { } refused ? Refuse(refused) : notes.Append(job, new Fixed(Now, fix, effect) { TestedBefore = testedBefore });

    /// <summary>A part exchanged for one known to be good.</summary>
    public StepResult Swapped(string job, string part, string? fix, Effect effect, bool? oldBack = null) =>
        fix is not null && KnownFix(fix) is { } refused ? Refuse(refused) : notes.Append(job, new Swapped(Now, part, fix, effect, oldBack));

    public StepResult Opened(string job, string step, bool shut = false) => notes.Append(job, new Opened(Now, step, shut));

    /// <summary>Something came off, or is back on.</summary>
    /// <param name="where">Where it lies; of several things called alike it says which one is back on.</param>
    /// <param name="note">What is odd about it: damage, a fastener unlike the others.</param>
    public StepResult TakenOff(string job, string what, string? where, bool backOn = false, string? note = null, ImmutableArray<string> photos = default) =>
        string.IsNullOrWhiteSpace(what) ? Refuse(WorkshopRefusals.NothingSaid("thing taken off"))
        : notes.Append(job, new TakenOff(Now, what, where, backOn) { Note = note, Photos = photos.IsDefault ? [] : photos });

    /// <summary>Something came off, with a photo; without words it is called after the photo.</summary>
    /// <param name="photo">JPEG, PNG or WebP, up to <see cref="Limits.Photo"/> bytes.</param>
    public StepResult TakenOff(string job, string what, string? where, string? note, ReadOnlyMemory<byte> photo) =>
        photos.Keep(job, photo, path => TakenOff(job, string.IsNullOrWhiteSpace(what) ? OnPhoto(job) : what, where, note: note, photos: [path]));

    private string OnPhoto(string job) => $"what photo {(Book.Find<Job>(job)?.Log.Sum(e => e.Photos.Length) ?? 0) + 1} shows";

    public StepResult Powered(string job, PowerStage stage, string? current) => notes.Append(job, new Powered(Now, stage, current));

    /// <summary>The part and the wait: needed, ordered, arrived, tested, fitted.</summary>
    public StepResult PartMoved(string job, PartMoved moved) =>
        PartCheck.Refuses(moved) is { } refused ? Refuse(refused) : notes.Append(job, moved with { At = Now });

    /// <summary>What the owner agreed to.</summary>
    public StepResult Agree(string job, Consent consent) =>
        consent.SpendingLimit < 0 ? Refuse(WorkshopRefusals.Negative("spending limit", consent.SpendingLimit.Value)) : notes.SetConsent(job, consent);

    /// <summary>Takes one log entry back; a part that it took from the drawer lies there again.</summary>
    /// <param name="entry">Index in the log, 0 the oldest.</param>
    public StepResult Undo(string job, int entry) => drawer.Returned(notes.RemoveEntry(job, entry));

    /// <summary>Puts back an entry that was taken back, where it was; a part from the drawer is taken out again.</summary>
    /// <param name="entry">Index it had, 0 the oldest.</param>
    /// <param name="text">As <see cref="EntryText.Of"/> wrote it.</param>
    public StepResult PutBack(string job, int entry, string text) => EntryText.Read(text) is { } was
        ? drawer.TakenAgain(notes.InsertEntry(job, entry, was), was)
        : Refuse(WorkshopRefusals.NoEntry());

    /// <summary>What it waits for; null for the bench itself.</summary>
    public StepResult WaitFor(string job, Waiting? waiting) => notes.SetWaiting(job, waiting);

    /// <summary>Closes a job; a cause in free words becomes a listed one. Says what that changed in the knowledge.</summary>
    public StepResult Close(string job, CloseRequest request) => new Closing(bench, notes).Close(job, request, Now);

    /// <summary>The unit was heard of again.</summary>
    public StepResult FollowUp(string job, bool cameBack, string? note = null) => notes.AppendFollowUp(job, new(Now, cameBack, note));

    private static StepResult Refuse(Refusal refused) => new() { Refused = refused };

    private Notebook Book => bench.Current.Notes;

    private Refusal? Known<T>(string kind, string id) where T : Note =>
        Book.Find<T>(id) is not null ? null : WorkshopRefusals.NoSuch(kind, id, Nearest(id, Book.Of<T>().Select(n => n.Id)));

    private Refusal? ValueOf(string id, string value)
    {
        var finding = Book.Find<Finding>(id)!;
        return finding.Values.Any(v => v.Id == value) ? null : WorkshopRefusals.NoSuchValue(finding.Name, value, finding.Values.Select(v => v.Id));
    }

    private Refusal? OutcomeOf(string id, string outcome)
    {
        var test = Book.Find<Test>(id)!;
        var values = Book.Find<Finding>(test.Reveals)?.Values.Select(v => v.Id) ?? test.Outcomes.Select(o => o.Id);
        return values.Contains(outcome) ? null : WorkshopRefusals.NoSuchValue(test.Name, outcome, values);
    }

    private Refusal? EraseRefusal(Job job, string reset) =>
        Book.Find<Reset>(reset) is { Erases: { } erases } known && job.Consent.MayErase != true ? WorkshopRefusals.EraseNotAgreed(known.Name, erases) : null;

    private Refusal? KnownFix(string id)
    {
        var fixes = Book.Mends.Select(m => m.Id).Append(AlwaysThere.HandBack).Distinct(StringComparer.Ordinal).ToList();
        return fixes.Contains(id) ? null : WorkshopRefusals.NoSuch("fix", id, Nearest(id, fixes));
    }

    private static IEnumerable<string> Nearest(string id, IEnumerable<string> ids) => Triage.Notes.Nearest.To(id, ids) is { } near ? [near] : [];
}
