using Triage.Notes.Kinds;

namespace Triage.Notes.Linting;

/// <summary>Plain findings that are asked or tested, and whose buttons would only say yes and no.</summary>
internal static class Buttons
{
    public static IEnumerable<Remark> Without(NoteIndex index)
    {
        var tested = index.Notes.OfType<Test>().SelectMany(t => t.Revealed).ToHashSet();
        return from finding in index.Notes.OfType<Finding>()
               where finding.IsPlain && (finding.Ask is not null || tested.Contains(finding.Id)) && (finding.Seen is null || finding.NotSeen is null)
               select new Remark(finding, null, KnowledgeProblems.NoSentences(finding));
    }
}
