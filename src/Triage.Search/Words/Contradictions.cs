namespace Triage.Search.Words;

/// <summary>"Kick pad dead, rest of the pads fine": the machine is as bad as the worst that is said of it under the same conditions.</summary>
internal static class Contradictions
{
    public static IEnumerable<RecognisedFinding> Settled(IReadOnlyCollection<RecognisedFinding> found, Vocabulary vocabulary) =>
        found.Where(f => !vocabulary.IsNormal(f.Finding, f.Value)
            || !found.Any(o => o.Finding == f.Finding && !vocabulary.IsNormal(o.Finding, o.Value) && o.When.SequenceEqual(f.When)));
}
