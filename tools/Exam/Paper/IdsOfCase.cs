using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Tools.Exam.Cases;
using Triage.Tools.Exam.Scoring;
using Triage.Workshop.Knowledge;
using Triage.Workshop.Model;

namespace Triage.Tools.Exam.Paper;

/// <summary>
/// Everything that the product may ever show for a case, by id and without any ranking, as a key that waits to be filled in: whoever
/// judges sees what could come, not what does.
/// </summary>
internal sealed class IdsOfCase(ExamCase exam, Notebook notes, DeviceScope scope, Job job)
{
    private readonly HashSet<string> listed = [];

    public IEnumerable<string> Lines() =>
    [
        $"id: {exam.Id}",
        $"# read from the complaint: {string.Join(", ", job.Log.OfType<Saw>().Select(s => $"{s.Finding} = {s.Value}"))}",
        $"# read of its build: {string.Join(", ", scope.Build.Traits.Select(t => $"{t.Trait} = {string.Join(" and ", t.Values)}"))}",
        $"right-ending: {string.Join(", ", exam.RightEndings.Select(Word))}",
        "truth-faults: []",
        "answers: []",
        "judged:",
        .. Section("asked of the owner while the machine is handed over", scope.AskedAtTheCounter.Select(f => (f.Id, Says(f)))),
        .. Section("secured before diagnosis", scope.Class.Protect.Where(p => scope.Fits(p.Build)).Select(p => (p.Id, $"{p.Name}{(p.Loses is { } loses ? $" (else lost: {loses})" : "")}"))),
        .. Section("questions, looks and readings", Tests().Where(t => t.Round.IsEmpty).Select(t => (t.Id, Says(t))).Concat(scope.Questions.Select(f => (f.Id, Says(f))))),
        .. Tests().Where(t => !t.Round.IsEmpty).SelectMany(Round),
        .. Section("resets", scope.Resets.Select(r => (r.Id, $"{r.Name}{(r.Erases is { } erases ? $" (erases {erases})" : "")}{Minutes(r.Effort)}"))),
        .. Section("fixes", Fixes().Select(m => (m.Id, $"{m.Name}{(m.Swap ? " (swap)" : "")}{Minutes(m.Effort)}"))),
        .. Section("always there", Always.Select(id => (id, AlwaysThere.NameOf(id)!))),
        "# causes that may be ranked",
        .. scope.Faults.OrderBy(f => f.Id, StringComparer.Ordinal).Select(f => $"#   {f.Id}: {f.Name}"),
        $"#   {SpecialFaults.NothingWrong}: nothing is wrong with it",
        .. exam.Judged.Keys.Concat(exam.Answers.Select(a => a.Id)).Distinct().Where(id => !listed.Contains(id) && id != Marking.Proof).Order(StringComparer.Ordinal).Select(id => $"# in the key, but nothing by that id comes: {id}"),
        .. exam.Truth.SelectMany(part => part).Where(id => id != SpecialFaults.NothingWrong && scope.Faults.All(f => f.Id != id)).Select(id => $"# in the key, but no such cause is ranked: {id}"),
    ];

    private string[] Always => [.. scope.Class.Exchange is null ? Array.Empty<string>() : [AlwaysThere.Exchange], AlwaysThere.AskConsent, AlwaysThere.HandBack, AlwaysThere.HandOver, AlwaysThere.PartOut, AlwaysThere.Park, AlwaysThere.WorkAround];

    private IEnumerable<Test> Tests() => scope.Tests.OrderBy(t => t.Way).ThenBy(t => t.Id, StringComparer.Ordinal);

    private IEnumerable<Mend> Fixes() =>
        scope.Faults.SelectMany(f => f.Mends).Select(m => m.Id).Distinct().Order(StringComparer.Ordinal)
            .Select(id => notes.Of<Fault>().SelectMany(f => f.Mends).FirstOrDefault(m => m.Id == id && m.Name is not null)).OfType<Mend>();

    private IEnumerable<string> Round(Test round) =>
        Section($"{round.Id}: round “{round.Name}”{Minutes(round.Effort)}", round.Round.Select(id => notes.Find<Finding>(id)).OfType<Finding>().Where(f => scope.Fits(f.Build)).Select(f => (f.Id, Says(f))));

    private IEnumerable<string> Section(string title, IEnumerable<(string Id, string Says)> lines)
    {
        ImmutableArray<(string Id, string Says)> all = [.. lines];
        return all.IsEmpty ? [] : [$"  # {title}", .. all.Select(l => listed.Add(l.Id) ? $"  {l.Id}: {Judged(l.Id)} # {l.Says}" : $"  # {l.Id}, as above")];
    }

    /// <summary>What the key says already.</summary>
    private string Judged(string id) => exam.Judged.GetValueOrDefault(id)?.Is is { } verdict ? Word(verdict) : "";

    private string Says(Test test) => $"{Word(test.Way)} | {test.Name}{Minutes(test.Effort)} | {(test.Reveals is { } id && notes.Find<Finding>(id) is { } finding ? Values(finding) : string.Join("; ", test.Outcomes.Select(o => $"{o.Id} = {o.Name}")))}";

    private static string Says(Finding finding) => $"{finding.Name}{(finding.Ask is { } ask ? $": {ask}" : "")} | {Values(finding)}";

    private static string Values(Finding finding) => string.Join("; ", finding.Values.Select(v => $"{v.Id} = {v.Name}"));

    private static string Minutes(Effort effort) => FormattableString.Invariant($", {effort.Minutes:0.#} min");

    private static string Word<T>(T value) where T : struct, Enum =>
        string.Concat(value.ToString().Select((c, i) => char.IsUpper(c) && i > 0 ? $"-{char.ToLowerInvariant(c)}" : $"{char.ToLowerInvariant(c)}"));
}
