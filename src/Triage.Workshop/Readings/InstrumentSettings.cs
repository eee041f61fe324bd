using System.Collections.Immutable;
using Triage.Measurements.Instruments;
using Triage.Measurements.Quantities;
using Triage.Measurements.Readings;
using Triage.Notes;
using Triage.Notes.Parsing;

namespace Triage.Workshop.Readings;

/// <summary>Meters and testers as <c>bench.yaml</c> sets them up; one with something wrong in it is named and left out.</summary>
internal static class InstrumentSettings
{
    private const double UsualInput = 10e6;

    public static ImmutableArray<Instrument> Read(FieldReader fields) => fields.Each("instruments", One);

    public static bool Same(ImmutableArray<Instrument> one, ImmutableArray<Instrument> other) =>
        one.Length == other.Length
        && one.Zip(other).All(p => (p.First.Name, p.First.InputOhms) == (p.Second.Name, p.Second.InputOhms) && p.First.Ranges.SequenceEqual(p.Second.Ranges));

    private static Instrument One(FieldReader meter)
    {
        var name = meter.NeededText("name") ?? "";
        var ranges = meter.Each("ranges", Range, vital: true);
        return new(name, ranges) { InputOhms = meter.Has("input") ? Value(meter, "input", Unit.Ohm) : UsualInput };
    }

    private static InstrumentRange Range(FieldReader range)
    {
        var mode = Mode(range);
        var unit = ReadingModes.UnitOf(mode) ?? Unit.Number;
        return new(mode, Value(range, "to", unit), Value(range, "step", unit), range.Amount("percent") ?? 0, range.Amount("counts") ?? 0);
    }

    private static ReadingMode Mode(FieldReader range)
    {
        if (range.NeededScalar("mode") is not { } scalar)
            return default;
        var mode = ReadingModeWords.Find(scalar.Text);
        if (mode is null or ReadingMode.ComponentTester)
            range.Break(scalar, NoteProblems.NotOneOf("mode", scalar.Text, ReadingModeWords.All, null));
        return mode ?? default;
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
