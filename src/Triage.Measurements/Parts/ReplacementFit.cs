using System.Collections.Immutable;

namespace Triage.Measurements.Parts;

/// <summary>
/// What a replacement must match, where it may be better and what must not change. Safety capacitors like for like (IEC 60384-14);
/// fuses keep current and speed (IEC 60127). The rest is common practice, no source. Local codes and licensed practice come first.
/// </summary>
public static class ReplacementFit
{
    private const double SameWithin = 0.001;

    /// <summary>A remark on every respect that matters for the kind and that the original states.</summary>
    public static ImmutableArray<FitRemark> Judge(PartKind kind, PartRating original, PartRating candidate) =>
    [
        .. (kind switch
        {
            PartKind.Resistor => Resistor(original, candidate),
            PartKind.FusibleResistor => FusibleResistor(original, candidate),
            PartKind.FilmOrCeramicCapacitor => Capacitor(original, candidate, mayExceed: 0),
            PartKind.AluminiumElectrolytic => Electrolytic(original, candidate),
            PartKind.DoubleLayerCapacitor => Electrolytic(original, candidate),
            PartKind.SafetyCapacitor => Safety(original, candidate),
            PartKind.Fuse => Fuse(original, candidate),
        }).Concat(Size(original, candidate)).OfType<FitRemark>(),
    ];

    /// <summary>The worst remark's verdict: one misfit spoils the part.</summary>
    public static Fit Overall(ImmutableArray<FitRemark> remarks) =>
        remarks.IsEmpty ? Fit.Check : remarks.Max(r => r.Fit) is Fit.Better ? Fit.Same : remarks.Max(r => r.Fit);

    private static IEnumerable<FitRemark?> Resistor(PartRating o, PartRating c) =>
    [
        Value(o, c, 0, "a resistor's value sets currents: it must match"),
        AtLeast("power", o.Watts, c.Watts, "more power runs cooler"),
        AtLeast("voltage", o.Volts, c.Volts, "the body must stand the voltage"),
        AtMost("tolerance", o.TolerancePercent, c.TolerancePercent, "closer tolerance does no harm"),
    ];

    private static IEnumerable<FitRemark?> FusibleResistor(PartRating o, PartRating c) =>
    [
        Value(o, c, 0, "it must open at the same overload"),
        MustEqual("power", o.Watts, c.Watts, "a fusible resistor must not get stronger: more power opens too late, and less too soon"),
    ];

    private static IEnumerable<FitRemark?> Capacitor(PartRating o, PartRating c, double mayExceed) =>
    [
        Value(o, c, mayExceed, mayExceed > 0 ? "a little more is fine for smoothing, not for timing or coupling" : "it sets a time or a frequency: it must match"),
        AtLeast("voltage", o.Volts, c.Volts, "the same or more"),
        AtLeast("temperature", o.MaxCelsius, c.MaxCelsius, "hotter rated lives longer"),
    ];

    private static IEnumerable<FitRemark?> Electrolytic(PartRating o, PartRating c) =>
    [
        .. Capacitor(o, c, mayExceed: 0.5),
        AtMost("series resistance", o.SeriesOhms, c.SeriesOhms, "the same or less carries ripple and peak current"),
    ];

    private static IEnumerable<FitRemark?> Safety(PartRating o, PartRating c) =>
    [
        Value(o, c, 0, "leakage current and noise filtering hang on it"),
        MustBe("safety class", o.SafetyClass, c.SafetyClass, "like for like, with its approval marks (IEC 60384-14): another sort can kill or burn"),
        AtLeast("voltage", o.Volts, c.Volts, "never less on the mains"),
    ];

    private static IEnumerable<FitRemark?> Fuse(PartRating o, PartRating c) =>
    [
        MustEqual("current", o.Amperes, c.Amperes, "the wiring is protected for this current (IEC 60127): a larger fuse lets it burn, a smaller one blows for nothing"),
        MustBe("speed", o.Speed?.ToString(), c.Speed?.ToString(), "speed must not change (IEC 60127): too quick blows at switch-on, too slow protects nothing"),
        AtLeast("voltage", o.Volts, c.Volts, "it must break the arc"),
        AtLeast("breaking capacity", o.BreakingAmperes, c.BreakingAmperes, "a fuse that cannot break the fault current bursts"),
    ];

    private static IEnumerable<FitRemark?> Size(PartRating o, PartRating c) =>
    [
        Pitch(o.LeadPitchMillimetres, c.LeadPitchMillimetres),
        AtMost("diameter", o.DiameterMillimetres, c.DiameterMillimetres, "it must fit between its neighbours"),
        AtMost("height", o.HeightMillimetres, c.HeightMillimetres, "the lid must close"),
    ];

    private static FitRemark? Value(PartRating o, PartRating c, double mayExceed, string why)
    {
        if (o.Value is not { } wanted || c.Value is not { } offered)
        {
            return o.Value is null && c.Value is null ? null : new FitRemark("value", Fit.Check, $"not said on both: {why}");
        }

        var ratio = wanted.Unit == offered.Unit ? offered.Value / wanted.Value : double.NaN;
        var fit = Math.Abs(ratio - 1) < SameWithin ? Fit.Same : ratio > 1 && ratio <= 1 + mayExceed ? Fit.Check : Fit.Unfit;
        return new FitRemark("value", fit, why);
    }

    private static FitRemark? AtLeast(string respect, double? wanted, double? offered, string why) => Compare(respect, wanted, offered, why, Fit.Better, Fit.Unfit);

    private static FitRemark? AtMost(string respect, double? wanted, double? offered, string why) => Compare(respect, wanted, offered, why, Fit.Unfit, Fit.Better);

    private static FitRemark? MustEqual(string respect, double? wanted, double? offered, string why) => Compare(respect, wanted, offered, why, Fit.Unfit, Fit.Unfit);

    /// <summary>Legs can be bent a little, so another pitch is for the eye to judge.</summary>
    private static FitRemark? Pitch(double? wanted, double? offered) =>
        Compare("lead pitch", wanted, offered, "legs bent under strain crack the seal", Fit.Check, Fit.Check);

    private static FitRemark? Compare(string respect, double? wanted, double? offered, string why, Fit above, Fit below) => (wanted, offered) switch
    {
        (null, _) => null,
        (_, null) => new FitRemark(respect, Fit.Check, $"not said for the replacement: {why}"),
        ({ } w, { } o) => new FitRemark(respect, Math.Abs(o - w) <= Math.Abs(w) * SameWithin ? Fit.Same : o > w ? above : below, why),
    };

    private static FitRemark? MustBe(string respect, string? wanted, string? offered, string why) => (wanted, offered) switch
    {
        (null, _) => new FitRemark(respect, Fit.Check, $"not said for the original: {why}"),
        (_, null) => new FitRemark(respect, Fit.Check, $"not said for the replacement: {why}"),
        _ => new FitRemark(respect, wanted.Equals(offered, StringComparison.OrdinalIgnoreCase) ? Fit.Same : Fit.Unfit, why),
    };
}
