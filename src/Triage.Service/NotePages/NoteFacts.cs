using System.Collections.Immutable;
using System.Globalization;
using Triage.Notes.Kinds;
using Triage.Service.Shown;

namespace Triage.Service.NotePages;

/// <summary>What a note's fields say, as headed lists. The owner and the serial number of a job are not among them.</summary>
internal static class NoteFacts
{
    public static ImmutableArray<Caution> Cautions(Note note) => note switch
    {
        DeviceClass c => c.Cautions,
        PartClass p => p.Cautions,
        Fault f => f.Cautions,
        Test t => t.Effort.Cautions,
        Reset r => r.Effort.Cautions,
        _ => [],
    };

    public static IEnumerable<(string Title, ImmutableArray<string> Lines)> Of(Note note) => All(note).Where(f => !f.Lines.IsEmpty);

    private static ImmutableArray<(string Title, ImmutableArray<string> Lines)> All(Note note) => note switch
    {
        DeviceClass c =>
        [
            ("Stop at once", [.. c.StopAtOnce.Select(s => s.Say)]), ("First of all", [.. c.Protect.Select(p => p.Name)]), ("Builds", [.. c.Builds.Select(Trait)]), ("Roles", [.. c.Roles.Select(r => r.Name)]),
            ("To open", [.. c.Access.Select(Access)]), ("While it is open", c.WhileOpen), ("Proof after the mend", [.. c.Proof.Select(p => p.Say)]), ("Not covered", c.NotCovered),
        ],
        Device d => [("Parts", [.. d.Parts.Select(Part)]), ("To open", [.. d.Access.Select(Access)]), ("Boards", d.Boards), ("Drawings", [.. d.Drawings.Select(g => $"{g.File} {g.Shows}")])],
        PartClass p =>
        [
            ("Ways to fail", [.. p.Modes.Select(m => $"{m.Name}{Chance(m.Share)}")]), ("What wears it", p.Wears), ("Look for", p.LookFor), ("Test in place", p.TestInPlace), ("Test out", p.TestOut),
            ("A replacement must match", p.MustMatch), ("May be better", p.MayBeBetter), ("Must not change", p.MustNotChange), ("A new one can be bad", p.NewCanBeBad),
        ],
        Fault f => [("Shows", [.. f.Shows.Select(s => $"{s.Finding}{(s.Value is null ? "" : $": {s.Value}")}{Chance(s.Chance)}")]), ("Mended by", [.. f.Mends.Select(m => $"{m.Name ?? m.Id}{Chance(m.Works)}")])],
        Finding f => [("Values", [.. f.Values.Select(v => v.Says.IsEmpty ? StepWords.Of(v) : $"{StepWords.Of(v)}: “{string.Join("”, “", v.Says)}”")])],
        Test t => [("Steps", t.Steps), ("Outcomes", [.. t.Outcomes.Select(o => o.Name)]), ("Tools", t.Effort.Tools)],
        Reset r => [("Before", r.Before), ("Steps", r.Steps), ("Erases", r.Erases is null ? [] : [r.Erases]), ("Clears", [.. r.Clears.Select(c => $"{c.Fault}{Chance(c.Works)}")])],
        Job j => [("Complaint", [j.Complaint]), ("History", j.History)],
        _ => [],
    };

    private static string Trait(Trait trait) => $"{trait.Name}: {string.Join(", ", trait.Values.Select(v => v.Name))}";

    private static string Access(AccessStep step) => $"{step.Name}, {StepWords.Minutes(step.Minutes)}{(step.Behind is null ? "" : $", behind {step.Behind}")}";

    private static string Part(DevicePart part) => string.Join(", ", new[] { part.Designator, part.Part, part.Role, part.Where, part.Rating }.OfType<string>());

    private static string Chance(Chance? chance) => chance is null ? ""
        : $" ({chance.Word ?? chance.Probability.ToString("0.###", CultureInfo.InvariantCulture)}{(chance.Source is null ? "" : $"; {chance.Source}")})";
}
