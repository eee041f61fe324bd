using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Notes.Parsing;

internal static class ReadProof
{
    public static ImmutableArray<ProofStep> Each(FieldReader fields, string? accessOf) => fields.Each(
        "proof",
        step => new ProofStep(step.NeededText("say") ?? "") { Effort = ReadEffort.From(step, accessOf), Build = ReadBuild.Condition(step) },
        plain: say => new ProofStep(say.Text));
}
