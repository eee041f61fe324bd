using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Notes.Writing;

/// <summary>Writes the traits of a class, what is told of a build, and for which builds something is.</summary>
public static class WriteBuild
{
    /// <summary>The value of <c>build</c> in a device or a job.</summary>
    public static YamlFields Of(Build told) => Of(told.Traits);

    internal static FieldWriter Build(this FieldWriter fields, Build told) => fields.Value("build", told.IsUntold ? null : Of(told));

    internal static FieldWriter Build(this FieldWriter fields, BuildCondition? condition) => fields.Value("build", condition is null ? null : Of(condition.Traits));

    internal static FieldWriter Builds(this FieldWriter fields, ImmutableArray<Trait> traits) => fields.Each("builds", traits, trait => new FieldWriter()
        .Text("trait", trait.Id)
        .Text("name", trait.Name)
        .Mark("several", trait.Several)
        .Each("values", trait.Values, value => new FieldWriter()
            .Text("value", value.Id).Text("name", value.Name).Chance("share", value.Share).Texts("says", value.Says).OnOneLine)
        .OnLines);

    private static YamlFields Of(ImmutableArray<TraitValues> traits) =>
        new([.. traits.Select(t => (t.Trait, t.Values is [var one] ? YamlValue.Of(one) : YamlValue.Of(t.Values)))]);
}
