using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Triage.Notes.Kinds;
using Triage.Search.Words;
using Triage.Workshop.Answers.Wording;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Steps;

/// <summary>From a complaint to a job with its first entries.</summary>
internal sealed class TakingIn(Bench bench, DateTimeOffset now)
{
    public Asking Ask(string machine, string complaint, ImmutableArray<SeenFinding> seen)
    {
        var unusable = seen.IsEmpty || !string.IsNullOrWhiteSpace(complaint) ? Refuses(complaint) : null;
        if ((unusable ?? seen.Select(Refuses).FirstOrDefault(r => r is not null)) is { } refused)
            return new(null, new([], [], []), null, refused);
        var (draft, recognition, remarks) = Draft(new() { Machine = machine, Complaint = complaint });
        var job = draft with { Log = [.. draft.Log, .. seen.Select(s => new Saw(now, s.Finding, s.Value))] };
        var asked = bench.AnswerFor(job);
        return new(job, recognition, asked.Answer, asked.Refused) { Remarks = remarks };
    }

    /// <summary>A machine without a note is taken in all the same: the job is real even if the book knows nothing of it.</summary>
    public StepResult TakeIn(TakeInRequest request)
    {
        if (Refuses(request.Complaint) is { } refused)
            return new() { Refused = refused };
        if (request.Worth < 0)
            return new() { Refused = WorkshopRefusals.Negative("worth", request.Worth.Value) };
        if (request.Consent.SpendingLimit < 0)
            return new() { Refused = WorkshopRefusals.Negative("spending limit", request.Consent.SpendingLimit.Value) };
        if (TypedPairs.BuildOf(request.Traits) is not { } typed)
            return new() { Refused = WorkshopRefusals.NoPair("supply=mains,cells") };
        var (job, _, remarks) = Draft(request with { Build = request.Build.With(typed) });
        return new() { Job = job, Remarks = remarks };
    }

    private static Refusal? Refuses(string complaint) =>
        string.IsNullOrWhiteSpace(complaint) ? WorkshopRefusals.NothingSaid("complaint")
        : complaint.Length > Limits.Complaint ? WorkshopRefusals.TooLong("complaint", complaint.Length, Limits.Complaint)
        : null;

    private Refusal? Refuses(SeenFinding seen)
    {
        if (bench.Notes.Find<Finding>(seen.Finding) is not { } finding)
            return WorkshopRefusals.NoSuch("finding", seen.Finding, Triage.Notes.Nearest.To(seen.Finding, bench.Notes.Of<Finding>().Select(f => f.Id)) is { } near ? [near] : []);
        return finding.Values.Any(v => v.Id == seen.Value) ? null : WorkshopRefusals.NoSuchValue(finding.Name, seen.Value, finding.Values.Select(v => v.Id));
    }

    private (Job Job, Recognition Recognition, ImmutableArray<string> Remarks) Draft(TakeInRequest request)
    {
        var complaint = request.Complaint ?? "";
        var machine = MachineNames.Resolve(request.Machine ?? "", complaint, bench.Notes);
        var recognition = string.IsNullOrWhiteSpace(complaint) ? new Recognition([], [], []) : bench.Recogniser.Recognise(complaint.Length > Limits.Complaint ? complaint[..Limits.Complaint] : complaint, machine.Class?.Id);
        recognition = recognition with { NotUnderstood = [.. recognition.NotUnderstood.Where(piece => !MachineNames.OnlyNames(machine, piece))] };
        var name = $"{machine.Name}: {FirstWords(complaint)}";
        var job = new Job(NewId(), name)
        {
            Device = machine.Device?.Id,
            Class = machine.Device is null ? machine.Class?.Id : null,
            Unit = machine.Device is null && !string.IsNullOrWhiteSpace(request.Machine) ? request.Machine.Trim() : null,
            Opened = now,
            Technician = request.Technician,
            Owner = request.Owner,
            Serial = request.Serial,
            Complaint = complaint,
            Build = BuildOf(request, machine),
            NoOwner = request.NoOwner,
            History = string.IsNullOrWhiteSpace(request.Description) ? request.History : request.History.Add(request.Description.Trim()),
            Consent = request.Consent,
            Worth = request.Worth,
            Log = [.. recognition.Findings.Concat(FromHistory(request.History, machine)).DistinctBy(f => (f.Finding, string.Join(' ', f.When)))
                .Select(f => new Saw(now, f.Finding, f.Value) { When = f.When, Sure = SureOf(f), ComesAndGoes = f.Intermittent, Words = f.Words })],
        };
        return (job, recognition, [.. Remarks(machine, recognition)]);
    }

    /// <summary>What a phrasing of the notes says in so many words is taken as said; a tenth of doubt is none.</summary>
    private static double? SureOf(RecognisedFinding found) => found.Sure < 0.9 ? Math.Round(found.Sure, 2) : null;

    /// <summary>"Ten years in a loft" tells as much in the history as in the complaint.</summary>
    private IEnumerable<RecognisedFinding> FromHistory(ImmutableArray<string> history, Machine machine) =>
        history.Where(h => !string.IsNullOrWhiteSpace(h)).SelectMany(h => bench.Recogniser.Recognise(h.Length > Limits.Complaint ? h[..Limits.Complaint] : h, machine.Class?.Id).Findings);

    /// <summary>What was ticked counts before what the words say.</summary>
    private static Build BuildOf(TakeInRequest request, Machine machine) => machine.Class is { } kind
        ? BuildWords.Told(kind, $"{request.Machine} . {request.Description}", string.Join(" . ", [.. request.History, request.Complaint])).With(request.Build)
        : request.Build;

    private IEnumerable<string> Remarks(Machine machine, Recognition recognition)
    {
        if (machine.Device is null && machine.Class is null)
            yield return WorkshopRefusals.UnknownMachine(machine.Said, machine.CanBe, bench.Notes.Of<DeviceClass>().Select(c => c.Name)).ToString();
        else if (machine.Device is null)
            yield return $"No note knows this model; answered for any {machine.Class!.Name.ToLowerInvariant()}.";
        var words = new WordsFor(bench.Notes, []);
        if (recognition.Notice is { } notice)
            yield return notice;
        foreach (var found in recognition.Findings.Where(f => f.ByMeaning))
            yield return $"Taken to mean {words.Entry(new Saw(now, found.Finding, found.Value))}: “{found.Words}”";
        foreach (var piece in recognition.NotUnderstood)
            yield return $"Not understood, kept as written: “{piece.Words}”";
        foreach (var tried in recognition.Tried)
            yield return $"Tried before, as the owner says: “{tried.Words}”";
    }

    /// <summary>Year and the next free number of it.</summary>
    private string NewId()
    {
        var year = now.Year.ToString(CultureInfo.InvariantCulture);
        var taken = bench.Notes.Jobs.Select(j => j.Id).Where(id => id.StartsWith(year + "-", StringComparison.Ordinal))
            .Select(id => int.TryParse(id[5..], NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : 0)
            .DefaultIfEmpty(0).Max();
        return FormattableString.Invariant($"{year}-{taken + 1:000}");
    }

    private static string FirstWords(string complaint)
    {
        var words = string.Join(' ', complaint.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        if (words.Length <= 60)
            return words;
        var cut = new StringBuilder();
        foreach (var rune in words.EnumerateRunes())
        {
            if (cut.Length >= 59)
                break;
            cut.Append(rune.ToString());
        }

        return cut.Append('…').ToString();
    }
}
