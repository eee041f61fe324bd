using Triage.Notes.Kinds;

namespace Triage.Notes.Linting;

/// <summary>Fixes of which neither the fix nor the class says how the mend is proven.</summary>
internal static class Unproven
{
    public static IEnumerable<Remark> Of(NoteIndex index, IReadOnlyList<ClassKnowledge> classes) =>
        from known in classes
        where known.Class.Format == NoteFormat.Current && known.Class.Proof.IsEmpty
        from mended in known.Mends.Select(m => m.Mend).Where(m => m.Proof.IsEmpty && m.Name is not null)
        group known.Class.Id by mended.Id into without
        let definer = index.DefinerOf(without.Key)!
        select new Remark(definer, definer.References.First(r => r.Kind == ReferenceKind.Fix && r.Id == without.Key), KnowledgeProblems.NoProof(without.Key, without.Distinct()));
}
