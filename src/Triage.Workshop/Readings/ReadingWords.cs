using Triage.Measurements.Instruments;
using Triage.Measurements.Quantities;
using Triage.Measurements.Readings;

namespace Triage.Workshop.Readings;

/// <summary>A verdict in a repairer's words.</summary>
internal static class ReadingWords
{
    /// <param name="what">What it shows: "flat and low all three times".</param>
    /// <param name="next">What to do next; null when nothing.</param>
    public static string Of(ReadingVerdict verdict, string what, string? next) =>
        $"{Place(verdict)}{Circumstances(verdict)}: {what}, {Speaks(verdict)}{(next is null ? "" : $"; {next}")}";

    /// <summary>Where the value lies beside a good one, the instrument's own error forgiven.</summary>
    public static string Against(Reading reading, ExpectedRange good, Instrument meter)
    {
        var range = $"{Value(good.Low, good.Unit)} … {Value(good.High, good.Unit)}";
        if (reading.Value is not { Kind: MeasuredKind.Value, Quantity: { } shown })
            return $"over range (a good one reads {range})";
        var error = meter.Accuracy(reading.Mode, shown.Value) ?? 0;
        return shown.Value < good.Low - error ? $"below a good one ({range})"
            : shown.Value > good.High + error ? $"above a good one ({range})"
            : $"as a good one ({range})";
    }

    private static string Place(ReadingVerdict verdict) =>
        $"{verdict.Reading!.Value} {(verdict.Row!.At.IsEmpty ? "across" : "at")} {verdict.Part}{(verdict.Row.At.IsEmpty ? "" : $" {ReadingPlaces.Terminal(verdict.Reading, verdict.Measured!)}")}";

    private static string Circumstances(ReadingVerdict verdict)
    {
        var reading = verdict.Reading!;
        string?[] said =
        [
            reading.Power switch
            {
                PowerState.Unknown => null,
                PowerState.OffDrained => "power off and drained",
                PowerState.Off => "power off",
                PowerState.Limited => "power limited",
                PowerState.On => "power on",
            },
            reading.OneLegLifted ? "one leg lifted" : null,
            reading.AfterSeconds is { } after && !verdict.ThreeLooks ? $"after {after:0.#} s" : null,
            reading.LeadsReversed && !verdict.ThreeLooks ? "leads reversed" : null,
        ];
        return string.Concat(said.OfType<string>().Select(s => ", " + s));
    }

    /// <summary>The state that explains it best against a good part; for a good one, the failure mode it speaks against most.</summary>
    private static string Speaks(ReadingVerdict verdict)
    {
        var (good, modes) = (verdict.States[0], verdict.States.Skip(1).ToList());
        var best = modes.MaxBy(m => m.Likelihood);
        var least = modes.MinBy(m => m.Likelihood);
        return best is not null && Decibans(best, good) is var speaks && speaks >= Strength.Slight ? $"speaks for {best.Name} ({Strength.Of(speaks)})"
            : least is not null && Decibans(good, least) is var against && against >= Strength.Slight ? $"speaks against {least.Name} ({Strength.Of(against)})"
            : "says nothing either way";
    }

    private static double Decibans(StateVerdict one, StateVerdict other) => 10 * Math.Log10(one.Likelihood / other.Likelihood);

    private static string Value(double value, Unit unit) => ValueText.Format(new(value, unit), 3);
}
