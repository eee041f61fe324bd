using Triage.Notes.Kinds;

namespace Triage.Notes;

/// <summary>What can be wrong with knowledge that is written correctly, in words.</summary>
public static class KnowledgeProblems
{
    public static ProblemText NoSentences(Finding finding) => Warning(
        $"`{finding.Id}` is asked or tested, but its buttons have no sentences of their own.",
        $"Write {(finding.Seen is null ? "seen: " : "")}{(finding.Seen is null && finding.NotSeen is null ? "and " : "")}{(finding.NotSeen is null ? "not-seen: " : "")}with what is so of the machine, as in seen: it forgets, not-seen: it remembers.");

    public static ProblemText NoProof(string fix, IEnumerable<string> classes) => Warning(
        $"Nothing says how a machine is proven after `{fix}`: neither the fix nor {Listed(classes)} has proof:.",
        "Write proof: here or in the class: what is measured, on what load, how warm, for how long.");

    public static ProblemText Unreached(Note note) => Warning(
        $"`{note.Id}` is met in no class of machine and no device.",
        note is Fault ? "Give a class the role that it names, or correct role:, part:, class: or build: here." : "Correct what it reveals, measures or decides, or the classes: that it is for.");

    public static ProblemText ReachesMany(Note note, int classes) => Hint(
        $"`{note.Id}` names no class, role or build, and reaches {classes} classes.", "Look whether it makes sense in all of them; else narrow it.");

    public static ProblemText NoDirectCheck(string fault, string machines) => Warning(
        $"`{fault}` is among the likelier faults of `{machines}`, but nothing there goes straight at it.",
        "Write a test that decides it, that measures its part in place, or that reveals something it usually shows; or a reset that clears it.");

    public static ProblemText NotToldApart(string fault, IEnumerable<string> others, string machines) => Warning(
        $"Nothing that `{machines}` offers tells `{fault}` from {Listed(others)}.",
        "Write what one of them shows and the other does not, or a test that decides one of them.");

    public static ProblemText NotBehind(string step, string role, Caution caution, string machines) => Warning(
        $"`{step}` works on `{role}`, which in `{machines}` lies behind `{caution.Reach}`, where {Words.Of(caution.Hazard)} is; its own access does not lead there, so it comes without the caution.",
        "Write access: with a step behind that one, or the caution.");

    public static ProblemText WeakerCaution(string step, Caution caution, string machines) => Warning(
        $"`{step}` has a caution of its own for {Words.Of(caution.Hazard)}, and would not be handed over though `{machines}` says so behind `{caution.Reach}`.",
        "Leave the caution out, so that the one of the class holds, or write hand-over: true.");

    public static ProblemText NotCovered(string what) => Hint($"Not covered: {what.TrimEnd('.')}.", "");

    private static string Listed(IEnumerable<string> ids) => string.Join(", ", ids.Select(id => $"`{id}`"));

    private static ProblemText Warning(string what, string instead) => new(Severity.Warning, what, instead);

    private static ProblemText Hint(string what, string instead) => new(Severity.Hint, what, instead);
}
