using System.Collections.Immutable;
using Triage.Measurements.Instruments;
using Triage.Measurements.Readings;
using Triage.Notes.Kinds;

namespace Triage.Notes.Parsing;

/// <summary>Reads what an instrument shows of a part class.</summary>
internal static class ReadPartReading
{
    /// <param name="part">Id of the part class, whose failure modes are named.</param>
    public static PartReading From(FieldReader fields, string part)
    {
        var mode = Mode(fields);
        var good = fields.NeededScalar("good") is { } text ? State(fields, text, mode) : null;
        var modes = fields.Group("modes")?.Mapping.Fields ?? [];
        foreach (var field in modes)
            fields.Refer(ReferenceKind.Mode, field.Key, part);
        return new(mode ?? default, good ?? StateReading.Unread, States(fields, modes, mode))
        {
            At = fields.Texts("at"),
            InPlace = fields.Flag("in-place"),
            PowerOn = fields.Flag("power-on") ?? false,
            Source = fields.Text("source"),
        };
    }

    private static ReadingMode? Mode(FieldReader fields)
    {
        if (fields.NeededScalar("mode") is not { } scalar)
            return null;
        var mode = ReadingModeWords.Find(scalar.Text);
        if (mode is null or ReadingMode.ComponentTester)
            fields.Break(scalar, NoteProblems.NotOneOf("mode", scalar.Text, ReadingModeWords.All.Where(w => w != ReadingModeWords.Of(ReadingMode.ComponentTester)), null));
        return mode;
    }

    private static ImmutableDictionary<string, StateReading> States(FieldReader fields, IEnumerable<YamlField> modes, ReadingMode? mode) =>
        modes.Select(f => (Id: f.Key.Text, State: f.Value is YamlScalar text ? State(fields, text, mode) : NoText(fields, f)))
            .Where(s => s.State is not null)
            .ToImmutableDictionary(s => s.Id, s => s.State!, StringComparer.Ordinal);

    /// <summary>A range that cannot be read breaks the reading: the others beside it would be weighed wrongly.</summary>
    private static StateReading? State(FieldReader fields, YamlScalar text, ReadingMode? mode)
    {
        if (mode is not { } set)
            return null;
        var (state, problem) = StateReading.Read(text.Text, set);
        if (problem is not null)
            fields.Break(text, NoteProblems.NotReading(problem));
        return state;
    }

    private static StateReading? NoText(FieldReader fields, YamlField field)
    {
        fields.Break(field.Value, NoteProblems.NotText(field.Key.Text));
        return null;
    }
}
