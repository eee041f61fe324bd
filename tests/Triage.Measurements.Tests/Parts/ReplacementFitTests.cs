using Triage.Measurements.Parts;
using Triage.Measurements.Quantities;
using Xunit;

namespace Triage.Measurements.Tests.Parts;

public class ReplacementFitTests
{
    private static readonly PartRating Smoothing =
        new() { Value = new Quantity(47e-6, Unit.Farad), Volts = 16, MaxCelsius = 85, HeightMillimetres = 11, LeadPitchMillimetres = 2 };

    private static readonly PartRating AcrossTheMains = new() { Value = new Quantity(100e-9, Unit.Farad), Volts = 275, SafetyClass = "X2" };

    private static Fit Of(PartKind kind, PartRating original, PartRating candidate, string respect) =>
        ReplacementFit.Judge(kind, original, candidate).Single(r => r.Respect == respect).Fit;

    [Theory]
    [InlineData(16, Fit.Same)]
    [InlineData(25, Fit.Better)]
    [InlineData(10, Fit.Unfit)]
    public void Electrolytic_VoltageAtLeast(double volts, Fit fit) =>
        Assert.Equal(fit, Of(PartKind.AluminiumElectrolytic, Smoothing, Smoothing with { Volts = volts }, "voltage"));

    [Fact]
    public void Electrolytic_BetterInOneRespectTooTallInAnother_IsUnfit() =>
        Assert.Equal(
            Fit.Unfit,
            ReplacementFit.Overall(ReplacementFit.Judge(PartKind.AluminiumElectrolytic, Smoothing, Smoothing with { Volts = 25, HeightMillimetres = 16 })));

    [Fact]
    public void UnsaidRespect_IsToBeChecked() =>
        Assert.Equal(Fit.Check, Of(PartKind.AluminiumElectrolytic, Smoothing, Smoothing with { MaxCelsius = null }, "temperature"));

    /// <summary>IEC 60384-14: X for across the line, Y for line to earth; not interchangeable here, however high the voltage.</summary>
    [Theory]
    [InlineData("X2", Fit.Same)]
    [InlineData("X1", Fit.Unfit)]
    [InlineData(null, Fit.Check)]
    public void SafetyCapacitor_LikeForLike(string? safetyClass, Fit fit)
    {
        var candidate = AcrossTheMains with { SafetyClass = safetyClass, Volts = 630 };
        Assert.Equal(fit, Of(PartKind.SafetyCapacitor, AcrossTheMains, candidate, "safety class"));
        Assert.Equal(fit, ReplacementFit.Overall(ReplacementFit.Judge(PartKind.SafetyCapacitor, AcrossTheMains, candidate)));
    }

    /// <summary>IEC 60127: neither the current nor the speed of a fuse may change in either direction.</summary>
    [Theory]
    [InlineData("T1A", Fit.Same)]
    [InlineData("F1A", Fit.Unfit)]
    [InlineData("T2A", Fit.Unfit)]
    [InlineData("T500mA", Fit.Unfit)]
    public void Fuse_KeepsCurrentAndSpeed(string candidate, Fit fit) =>
        Assert.Equal(fit, ReplacementFit.Overall(ReplacementFit.Judge(PartKind.Fuse, RatingShorthand.Read("T1A")!, RatingShorthand.Read(candidate)!)));

    [Fact]
    public void FusibleResistor_MustNotGetStronger_WherePlainOneMay()
    {
        var (half, one) = (new PartRating { Watts = 0.5 }, new PartRating { Watts = 1 });
        Assert.Equal(Fit.Unfit, Of(PartKind.FusibleResistor, half, one, "power"));
        Assert.Equal(Fit.Better, Of(PartKind.Resistor, half, one, "power"));
    }
}
