using System.Collections.Immutable;
using Triage.Measurements.Instruments;
using Triage.Measurements.Parts;
using Triage.Measurements.Readings;
using Triage.Notes.Kinds;

namespace Triage.Workshop.Readings;

/// <summary>Where one part reads when it is good and in each failure mode that its class says something of.</summary>
internal sealed record StateRanges(ExpectedRange Good, ImmutableArray<StateExpectation> Modes)
{
    /// <summary>Null when a range needs a rating that the parts list does not give.</summary>
    /// <param name="expected">What a sister channel or a working unit says to expect; null to go by the rating.</param>
    public static StateRanges? Of(PartReading row, MeasuredPart part, ExpectedRange? expected)
    {
        var unit = ReadingModes.UnitOf(row.Mode)!.Value;
        var rated = part.Rating.In(unit);
        var good = expected ?? (row.Good.Range(rated) is { } range ? new(range.Low, range.High, unit, ExpectedBy.Rating) : null);
        var modes = part.Class.Modes.DistinctBy(m => m.Id).Where(m => row.Modes.ContainsKey(m.Id))
            .Select(m => (m.Id, State: row.Modes[m.Id], Range: row.Modes[m.Id].Range(rated))).ToList();
        return good is null || modes.Any(m => m.Range is null) ? null
            : new(good, [.. modes.Select(m => new StateExpectation(m.Id, m.Range!.Value.Low, m.Range.Value.High) { OverRange = m.State.OverRange })]);
    }

    /// <summary>The same as a meter shows it that loads the resistance a voltage comes through.</summary>
    public StateRanges Loaded(double sourceOhms, double inputOhms) => new(
        Good.Loaded(sourceOhms, inputOhms),
        [.. Modes.Select(m => m with { Low = Loading.Shown(m.Low, sourceOhms, inputOhms), High = Loading.Shown(m.High, sourceOhms, inputOhms) })]);
}
