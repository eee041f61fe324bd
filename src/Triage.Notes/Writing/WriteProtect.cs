using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Notes.Writing;

/// <summary>Writes what is secured before a job and what proves a mend after it.</summary>
internal static class WriteProtect
{
    public static FieldWriter Protect(this FieldWriter fields, ImmutableArray<Protect> steps) => fields.Each("protect", steps, step => new FieldWriter()
        .Text("protect", step.Id)
        .Text("name", step.Name)
        .Texts("steps", step.Steps)
        .Effort(step.Effort)
        .Text("loses", step.Loses)
        .Each("when", step.When, Of)
        .Build(step.Build)
        .OnLines);

    public static FieldWriter Proof(this FieldWriter fields, ImmutableArray<ProofStep> steps) => fields.Each("proof", steps, step =>
        new FieldWriter().Effort(step.Effort).Build(step.Build) is { IsEmpty: true }
            ? YamlValue.Of(step.Say)
            : new FieldWriter().Text("say", step.Say).Effort(step.Effort).Build(step.Build).OnOneLine);

    private static YamlValue Of(Occasion occasion) => occasion switch
    {
        Noticed { Value: null } noticed => YamlValue.Of(noticed.Finding),
        Noticed noticed => new FieldWriter().Text("finding", noticed.Finding).Text("value", noticed.Value).OnOneLine,
        Feared feared => new FieldWriter().Text("fault", feared.Fault).Number("over", feared.Over).OnOneLine,
        _ => throw new ArgumentOutOfRangeException(nameof(occasion)),
    };
}
