using Triage.Notes.Kinds;

namespace Triage.Notes.Linting;

/// <summary>Notes that reach no machine, and those that reach so many without saying which that somebody should look.</summary>
internal static class Unreached
{
    /// <summary>Classes that a note without a class, role or build may reach unremarked. Our own limit, no source.</summary>
    private const int Many = 5;

    public static IEnumerable<Remark> Of(NoteIndex index, IReadOnlyList<ClassKnowledge> classes)
    {
        var reached = Count(classes, c => c.Faults.Cast<Note>().Concat(c.Tests).Concat(c.Findings));
        foreach (var note in index.Notes.Where(n => n is Fault or Test or Finding))
        {
            var count = reached.GetValueOrDefault(note.Id);
            if (count == 0 && note is not Finding && !index.Reach.IsOfDevices(note))
            {
                yield return new Remark(note, null, KnowledgeProblems.Unreached(note));
            }
            else if (count > Many && !IsNarrowed(note, index))
            {
                yield return new Remark(note, null, KnowledgeProblems.ReachesMany(note, count));
            }
        }
    }

    private static Dictionary<string, int> Count(IEnumerable<ClassKnowledge> classes, Func<ClassKnowledge, IEnumerable<Note>> notes) =>
        classes.SelectMany(c => notes(c).Select(n => n.Id).Distinct()).GroupBy(id => id).ToDictionary(g => g.Key, g => g.Count());

    /// <summary>It says itself for which machines it is.</summary>
    private static bool IsNarrowed(Note note, NoteIndex index) => note switch
    {
        Fault f => (f.Class ?? f.Role ?? f.Device) is not null || f.Build is not null,
        Test t => !t.Classes.IsEmpty || t.Build is not null || (t.MeasuresRole ?? t.Decides) is not null
            || t.Revealed.All(f => index.Resolve(f) is Finding { Classes.IsEmpty: false }),
        Finding f => !f.Classes.IsEmpty || f.Build is not null,
        _ => true,
    };
}
