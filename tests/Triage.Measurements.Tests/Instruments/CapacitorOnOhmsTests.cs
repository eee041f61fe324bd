using Triage.Measurements.Instruments;
using Triage.Measurements.Quantities;
using Xunit;

namespace Triage.Measurements.Tests.Instruments;

public class CapacitorOnOhmsTests
{
    /// <summary>dU/dt = I/C and the display shows U/I: an ideal 0.1 F climbs by 10 Ω/s at any current.</summary>
    [Fact]
    public void DisplayClimbsByOneOverC()
    {
        Assert.Equal(10, CapacitorOnOhms.OhmsPerSecond(0.1), 12);
        Assert.Equal(CapacitorOnOhms.OhmsPerSecond(0.1), CapacitorOnOhms.VoltsPerSecond(5e-4, 0.1) / 5e-4, 12);
    }

    [Theory]
    [InlineData("2.1 ohm", "2.1 ohm", "2.2 ohm", 0.1, false, CapacitorBehaviour.Shorted)]
    [InlineData("2.1 ohm", "2.1 ohm", "2.2 ohm", 0.1, true, CapacitorBehaviour.Shorted)]
    [InlineData("28 ohm", "320 ohm", "30 ohm", 0.1, true, CapacitorBehaviour.TakesCharge)]
    [InlineData("150 ohm", "155 ohm", "150 ohm", 0.1, true, CapacitorBehaviour.Leaky)]
    [InlineData("40 ohm", "-12 ohm", "90 ohm", 0.1, true, CapacitorBehaviour.Charged)]
    [InlineData("400 ohm", "40 ohm", "90 ohm", 0.1, true, CapacitorBehaviour.Charged)]
    [InlineData("OL", "OL", "OL", 0.1, true, CapacitorBehaviour.Open)]
    [InlineData("OL", "OL", "OL", 1e-9, true, CapacitorBehaviour.CannotTell)]
    [InlineData("20 k", "OL", "20 k", 47e-6, true, CapacitorBehaviour.TakesCharge)]
    [InlineData("unknown part", "OL", "OL", 0.1, true, CapacitorBehaviour.CannotTell)]
    public void Judge_ThreeLooks_SaysWhatTheCapacitorDoes(string start, string later, string reversed, double farads, bool lifted, CapacitorBehaviour behaviour) =>
        Assert.Equal(behaviour, CapacitorOnOhms.Judge(Read(start), Read(later), Read(reversed), farads, lifted).Behaviour);

    [Fact]
    public void ShortedInCircuit_IsNotBelievedBeforeOneLegIsLifted()
    {
        var inCircuit = CapacitorOnOhms.Judge(Read("2 ohm"), Read("2 ohm"), Read("2 ohm"), 0.1, oneLegLifted: false);
        Assert.EndsWith("lift one leg and repeat", inCircuit.Next, StringComparison.Ordinal);
    }

    private static MeasuredValue Read(string text) => ValueText.Read(text, Unit.Ohm).Value!;
}
