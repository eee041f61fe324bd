using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Workshop.Knowledge;
using Triage.Workshop.Model;

namespace Triage.Workshop.Answers.Wording;

/// <summary>How evidence and options are put in front of people.</summary>
/// <param name="access">Access steps of the machine; empty when nobody knows it.</param>
internal sealed class WordsFor(Notebook notes, ImmutableArray<AccessStep> access)
{
    /// <summary>What a log entry tells, in a repairer's words.</summary>
    public string Entry(LogEntry entry) => entry switch
    {
        Saw saw => Value(saw.Finding, saw.Value) + Circumstances(saw),
        Tested tested => notes.Find<Test>(tested.Test) is { Reveals: { } finding } ? Value(finding, tested.Outcome)
            : $"{NameOf(tested.Test)}: {Outcome(tested)}",
        ResetTried reset => $"{NameOf(reset.Reset)} {Effect(reset.Effect)}",
        Fixed fix => $"{NameOf(fix.Fix)} {Effect(fix.Effect)}",
        Swapped swap => $"{swap.Part} swapped: {Effect(swap.Effect)}{OldBack(swap)}",
        Held { StillWorks: false } held when notes.Find<Reset>(held.Action) is null => $"{NameOf(held.Action)} worked, and then the fault came back",
        Held held => $"{NameOf(held.Action)} {(held.StillWorks ? "still held" : "only held")} {(held.StillWorks ? "after" : "until")} {After(held.After)}",
        Read read => read.Text,
        QuickLine line => line.Text,
        Opened opened => $"{(opened.Shut ? "closed" : "opened")} {Step(opened.Step)}",
        TakenOff taken => $"{taken.What} {(taken.BackOn ? "back on" : "taken off")}{(taken.Where is null || taken.BackOn ? "" : $", lies in {taken.Where}")}",
        Powered powered => $"power on, {powered.Stage.ToString().ToLowerInvariant()}{(powered.Current is null ? "" : $", {powered.Current}")}",
        PartMoved part => $"{NameOf(part.Part)} {State(part.State)}",
        Secured secured => $"{NameOf(secured.Protect)}: {(secured.Done ? "done" : "not possible")}",
        Skipped skipped => $"{NameOf(skipped.Step)}: {(skipped.Why == SkipReason.CannotTell ? "cannot tell" : "skipped")}",
        RoundDone round => $"{NameOf(round.Round)}: gone through",
        CounterClosed => "the owner has left",
        _ => entry.Note ?? "",
    };

    public string NameOf(string id) =>
        notes.Find<Note>(id)?.Name
        ?? notes.Mend(id)?.Name
        ?? notes.Of<DeviceClass>().SelectMany(c => c.Protect).FirstOrDefault(p => p.Id == id)?.Name
        ?? AlwaysThere.NameOf(id)
        ?? id;

    public static string CauseName(string fault, Notebook notes) => fault switch
    {
        SpecialFaults.Unlisted => "None of these: a fault no note describes yet",
        SpecialFaults.NothingWrong => "Nothing wrong with the machine",
        _ => notes.Find<Fault>(fault)?.Name ?? fault,
    };

    public string Value(string findingId, string valueId)
    {
        var finding = notes.Find<Finding>(findingId);
        return finding is null ? $"{findingId}: {valueId}" : Value(finding, valueId);
    }

    /// <summary>A value that has words of its own in those; a plain yes or no by the finding's name.</summary>
    public static string Value(Finding finding, string valueId) =>
        finding.Values.FirstOrDefault(v => v.Id == valueId) is { } value && value.Name != value.Id ? value.Name
        : valueId switch
        {
            "yes" => finding.Name,
            "no" => $"not so: {finding.Name}",
            _ => $"{finding.Name}: {valueId}",
        };

    public string Step(string id) => access.FirstOrDefault(s => s.Id == id)?.Name ?? id;

    public static string State(PartState state) => state switch
    {
        PartState.Needed => "needed",
        PartState.Ordered => "ordered",
        PartState.Arrived => "arrived",
        PartState.TestedGood => "tested good",
        PartState.TestedBad => "tested bad",
        PartState.Fitted => "fitted",
    };

    private string Outcome(Tested tested) =>
        notes.Find<Test>(tested.Test)?.Outcomes.FirstOrDefault(o => o.Id == tested.Outcome)?.Name ?? tested.Outcome;

    private static string Effect(Effect effect) => effect switch
    {
        Notes.Kinds.Effect.Works => "worked",
        Notes.Kinds.Effect.NoChange => "made no difference",
        Notes.Kinds.Effect.Worse => "made it worse",
        Notes.Kinds.Effect.NotSeen => "done, outcome not seen",
    };

    private static string After(string? after) => after switch
    {
        "power-loss" or null => "power was lost",
        var other => other,
    };

    private static string OldBack(Swapped swap) => swap.OldBack switch
    {
        true => ", old part back and the fault returned",
        false => ", old part back and the fault stayed away",
        null => "",
    };

    private static string Circumstances(Saw saw) =>
        (saw.When.IsEmpty ? "" : $" when {string.Join(" and ", saw.When)}")
        + (saw.ComesAndGoes ? ", comes and goes" : "")
        + (saw.Sure is { } sure ? FormattableString.Invariant($", {100 * sure:0} % sure from the words") : "")
        + (saw.WatchedMinutes is { } minutes ? $" (watched {minutes:0.#} min)" : "");
}
