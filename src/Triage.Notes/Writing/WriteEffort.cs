using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Notes.Writing;

internal static class WriteEffort
{
    public static FieldWriter Effort(this FieldWriter fields, Effort effort) => fields
        .Amount("minutes", effort.Minutes)
        .Amount("money", effort.Money)
        .Amount("wait-minutes", effort.WaitMinutes)
        .Amount("wait-days", effort.WaitDays)
        .Text("access", effort.Access)
        .Texts("tools", effort.Tools)
        .Word<PowerStage>("power", effort.Power == PowerStage.Cold ? null : effort.Power)
        .Cautions(effort.Cautions)
        .Texts("after", effort.After)
        .Group("harm", new FieldWriter().Chance("chance", effort.HarmChance).Amount("price", effort.HarmPrice));

    /// <summary>A hazard alone where the standard words say it.</summary>
    public static YamlValue Of(Caution caution)
    {
        var standard = StandardCautions.Of(caution.Hazard);
        return caution == standard
            ? YamlValue.Of(Words.Of(caution.Hazard))
            : new FieldWriter()
                .Word<Hazard>("hazard", caution.Hazard)
                .Text("say", caution.Say == standard.Say ? null : caution.Say)
                .Flag("hand-over", caution.HandOver == standard.HandOver ? null : caution.HandOver)
                .Text("reach", caution.Reach)
                .Word<PowerStage>("power", caution.Power == PowerStage.Cold ? null : caution.Power)
                .Build(caution.Build)
                .OnOneLine;
    }

    public static FieldWriter Access(this FieldWriter fields, ImmutableArray<AccessStep> steps) => fields.Each("access", steps, step =>
        new FieldWriter().Text("step", step.Id).Text("name", step.Name).Amount("minutes", step.Minutes).Text("behind", step.Behind).Build(step.Build).OnOneLine);
}
