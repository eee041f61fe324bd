using System.Collections.Immutable;
using Triage.Measurements.Quantities;

namespace Triage.Measurements.Readings;

/// <summary>One look at an instrument.</summary>
/// <param name="From">Where the positive lead was: "IC3 pin 8", "C14 +".</param>
/// <param name="To">Where the other lead was, for a voltage which ground: "chassis", "mains-side negative"; null when not said.</param>
/// <param name="Mode">What the instrument was set to.</param>
/// <param name="Value">What it showed.</param>
public sealed record Reading(string From, string? To, ReadingMode Mode, MeasuredValue Value)
{
    public PowerState Power { get; init; }

    public LoadState Load { get; init; }

    /// <summary>Seconds after the leads went on or the power came on; null when not said.</summary>
    public double? AfterSeconds { get; init; }

    public bool LeadsReversed { get; init; }

    /// <summary>One leg lifted or the part taken out: nothing in parallel. False is in circuit.</summary>
    public bool OneLegLifted { get; init; }

    /// <summary>Name of the instrument; null when not said.</summary>
    public string? Instrument { get; init; }

    /// <summary>What makes the reading contradict itself or not to be trusted; empty when nothing does.</summary>
    public ImmutableArray<MeasurementProblem> Problems()
    {
        var problems = ImmutableArray.CreateBuilder<MeasurementProblem>();
        if (Value.Quantity is { } shown && ReadingModes.UnitOf(Mode) is { } unit && shown.Unit != unit)
        {
            problems.Add(MeasurementProblems.WrongUnit(shown.ToString(), UnitSymbols.Name(shown.Unit), UnitSymbols.Name(unit)));
        }

        if (ReadingModes.FeedsThePart(Mode) && Power is PowerState.On or PowerState.Limited)
        {
            problems.Add(MeasurementProblems.PowerOnWhileFeeding(From));
        }
        else if (ReadingModes.FeedsThePart(Mode) && Power is PowerState.Off)
        {
            problems.Add(MeasurementProblems.NotDrained(From));
        }

        if (AfterSeconds is < 0 or double.NaN)
        {
            problems.Add(MeasurementProblems.NegativeTime(From));
        }

        return problems.ToImmutable();
    }
}
