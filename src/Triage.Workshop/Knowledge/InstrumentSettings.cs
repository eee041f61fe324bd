using System.Collections.Immutable;
using Triage.Measurements.Instruments;
using Triage.Measurements.Quantities;
using Triage.Measurements.Readings;
using Triage.Notes;
using Triage.Notes.Parsing;
using Triage.Notes.Writing;

namespace Triage.Workshop.Knowledge;

/// <summary>Meters and testers as <c>bench.yaml</c> sets them up; one with something wrong in it is named and left out.</summary>
internal static class InstrumentSettings
{
    private const double UsualInput = 10e6;

    public static ImmutableArray<Instrument> Read(FieldReader fields) => fields.Each("instruments", One);

    public static bool Same(ImmutableArray<Instrument> one, ImmutableArray<Instrument> other) =>
        one.Length == other.Length
        && one.Zip(other).All(p => p.First with { Ranges = [], Cannot = [] } == p.Second with { Ranges = [], Cannot = [] }
            && p.First.Ranges.SequenceEqual(p.Second.Ranges) && p.First.Cannot.SequenceEqual(p.Second.Cannot));

    /// <summary>As <c>bench.yaml</c> has it.</summary>
    public static YamlFields Written(TypedInstrument typed) => new FieldWriter()
        .Text("name", typed.Name).Text("kind", typed.Kind).Text("input", typed.Input).Text("burden", typed.Burden).Texts("cannot", typed.Cannot)
        .Each("ranges", [.. typed.Ranges.Select(l => RangeLine.Read(l)!)], r => r).OnLines;

    private static Instrument One(FieldReader meter)
    {
        var name = meter.NeededText("name") ?? "";
        var ranges = meter.Each("ranges", Range, vital: true);
        return new(name, ranges)
        {
            InputOhms = meter.Has("input") ? Value(meter, "input", Unit.Ohm) : UsualInput,
            Kind = meter.Text("kind"),
            BurdenVolts = meter.Has("burden") ? Value(meter, "burden", Unit.Volt) : null,
            Cannot = [.. meter.Scalars("cannot").Select(scalar => ModeOf(meter, "cannot", scalar)).OfType<ReadingMode>()],
        };
    }

    private static InstrumentRange Range(FieldReader range)
    {
        var mode = Mode(range);
        var unit = ReadingModes.UnitOf(mode) ?? Unit.Number;
        return new(mode, Value(range, "to", unit), Value(range, "step", unit), range.Amount("percent") ?? 0, range.Amount("counts") ?? 0);
    }

    private static ReadingMode Mode(FieldReader range) => range.NeededScalar("mode") is { } scalar ? ModeOf(range, "mode", scalar) ?? default : default;

    private static ReadingMode? ModeOf(FieldReader fields, string key, YamlScalar scalar)
    {
        var mode = ReadingModeWords.Find(scalar.Text);
        if (mode is null or ReadingMode.ComponentTester)
            fields.Break(scalar, NoteProblems.NotOneOf(key, scalar.Text, ReadingModeWords.All, null));
        return mode;
    }

    /// <summary>A value above 0, such as 20 V, 10 mV, 10 M.</summary>
    private static double Value(FieldReader fields, string key, Unit unit)
    {
        if (fields.NeededScalar(key) is not { } scalar)
            return 1;
        var read = ValueText.Read(scalar.Text, unit);
        if (read.Quantity is { Value: > 0 } value)
            return value.Value;
        fields.Break(scalar, read.Problem is { } problem ? NoteProblems.NotReading(problem) : NoteProblems.NotNumber(key, scalar.Text));
        return 1;
    }
}
