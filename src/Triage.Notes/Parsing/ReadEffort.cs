using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Notes.Parsing;

/// <summary>Reads what something costs and needs, its cautions, and access trees.</summary>
internal static class ReadEffort
{
    /// <param name="accessOf">Device or class whose tree the access step belongs to; null when any.</param>
    public static Effort From(FieldReader fields, string? accessOf = null)
    {
        var harm = fields.Group("harm", vital: true);
        var effort = new Effort
        {
            Minutes = fields.Amount("minutes") ?? 0,
            Money = fields.Amount("money") ?? 0,
            WaitMinutes = fields.Amount("wait-minutes") ?? 0,
            WaitDays = fields.Amount("wait-days") ?? 0,
            Access = fields.Ref("access", ReferenceKind.Access, accessOf),
            Tools = fields.Texts("tools"),
            Power = fields.Has("power") ? fields.NeededWord<PowerStage>("power") : PowerStage.Cold,
            Cautions = Cautions(fields),
            After = fields.Refs("after", ReferenceKind.TestOrReset),
            HarmChance = harm?.NeededChance("chance"),
            HarmPrice = harm?.Amount("price") ?? 0,
        };
        harm?.Done();
        fields.Follow(harm, vital: true);
        return effort;
    }

    /// <param name="accessOf">Class whose access steps a caution may lie behind; null when any.</param>
    public static ImmutableArray<Caution> Cautions(FieldReader fields, string? accessOf = null) =>
        [.. fields.Items("cautions").Select(i => One(i, fields, accessOf))];

    public static ImmutableArray<AccessStep> Steps(FieldReader fields, string within) =>
        fields.Each("access", step => new AccessStep(
            step.NeededText("step") ?? "",
            step.Text("name") ?? step.Text("step") ?? "",
            step.Amount("minutes") ?? 0,
            step.Ref("behind", ReferenceKind.Access, within)) { Build = ReadBuild.Condition(step) });

    private static Caution One(YamlNode item, FieldReader fields, string? accessOf)
    {
        switch (item)
        {
            case YamlScalar scalar:
                return StandardCautions.Of(HazardOf(scalar, fields) ?? Hazard.Other) is var standard && standard.Hazard == Hazard.Other && scalar.Text != "other"
                    ? standard with { Say = scalar.Text }
                    : standard;
            case YamlMapping mapping:
                return Spoken(fields.Inner(mapping), fields, accessOf);
            default:
                fields.Warn(item, NoteProblems.NotGroup("cautions"));
                return StandardCautions.Of(Hazard.Other);
        }
    }

    private static Caution Spoken(FieldReader group, FieldReader fields, string? accessOf)
    {
        var word = group.NeededScalar("hazard");
        var standard = StandardCautions.Of(word is null ? Hazard.Other : HazardOf(word, fields) ?? Hazard.Other);
        var caution = standard with
        {
            Say = group.Text("say") ?? standard.Say,
            HandOver = group.Flag("hand-over") ?? standard.HandOver,
            Reach = group.Ref("reach", ReferenceKind.Access, accessOf),
            Power = group.Word<PowerStage>("power") ?? PowerStage.Cold,
            Build = ReadBuild.Condition(group),
        };
        group.Done();
        return caution;
    }

    private static Hazard? HazardOf(YamlScalar word, FieldReader fields)
    {
        var hazard = Words.Find<Hazard>(word.Text);
        if (hazard is null)
        {
            var words = Words.All<Hazard>();
            fields.Warn(word, NoteProblems.NotOneOf("cautions", word.Text, words, Nearest.To(word.Text, words)));
        }

        return hazard;
    }
}
