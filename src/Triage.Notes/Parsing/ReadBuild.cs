using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Notes.Parsing;

/// <summary>Reads the traits of a class, what is told of a build, and for which builds something is.</summary>
internal static class ReadBuild
{
    public static ImmutableArray<Trait> Traits(FieldReader fields)
    {
        var named = new Named("trait");
        return fields.Each("builds", trait => ReadTrait(trait, named));
    }

    /// <summary>The <c>build</c> of a device or a job.</summary>
    public static Build Told(FieldReader fields) => new(Values(fields));

    /// <summary>The <c>build</c> of anything that is for some machines only; null: for all.</summary>
    public static BuildCondition? Condition(FieldReader fields) => Values(fields) is { IsEmpty: false } traits ? new(traits) : null;

    private static ImmutableArray<TraitValues> Values(FieldReader fields)
    {
        if (fields.Group("build") is not { } build)
        {
            return [];
        }

        foreach (var trait in build.Mapping.Fields)
        {
            build.Refer(ReferenceKind.Trait, trait.Key, within: null);
        }

        return
        [
            .. build.Mapping.Fields
                .Select(t => new TraitValues(t.Key.Text, build.Refs(t.Key.Text, ReferenceKind.TraitValue, t.Key.Text)))
                .Where(t => !t.Values.IsEmpty),
        ];
    }

    private static Trait ReadTrait(FieldReader trait, Named named)
    {
        var id = named.Once(trait) ?? "";
        var values = new Named("value");
        return new Trait(id, trait.Text("name") ?? id)
        {
            Several = trait.Flag("several") ?? false,
            Values = trait.Each("values", value => ReadValue(value, values)),
        };
    }

    private static TraitValue ReadValue(FieldReader value, Named named)
    {
        var id = named.Once(value) ?? "";
        return new TraitValue(id, value.Text("name") ?? id, value.Chance("share")) { Says = value.Texts("says") };
    }
}
