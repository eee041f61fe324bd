using Triage.Measurements.Quantities;
using Triage.Measurements.Readings;
using Xunit;

namespace Triage.Measurements.Tests.Readings;

public class ReadingTests
{
    private static Reading Ohms(PowerState power) =>
        new("C14 +", "C14 -", ReadingMode.Resistance, MeasuredValue.Of(0.4, Unit.Ohm)) { Power = power };

    [Fact]
    public void OhmsOnADrainedCircuit_CanBeTrusted() => Assert.Empty(Ohms(PowerState.OffDrained).Problems());

    [Theory]
    [InlineData(PowerState.On)]
    [InlineData(PowerState.Limited)]
    public void OhmsWithPowerOn_WarnsBeforeAnythingElse(PowerState power) =>
        Assert.StartsWith("switch off, unplug, drain", Assert.Single(Ohms(power).Problems()).Instead, StringComparison.Ordinal);

    [Fact]
    public void VoltsOnTheCapacitanceRange_IsAContradiction() =>
        Assert.Equal(
            "\"5 V\" is in V where F is expected",
            Assert.Single(new Reading("C1", null, ReadingMode.Capacitance, MeasuredValue.Of(5, Unit.Volt)).Problems()).What);

    [Fact]
    public void ComponentTester_MayShowAnyUnit() =>
        Assert.Empty(new Reading("C1", null, ReadingMode.ComponentTester, MeasuredValue.Of(5, Unit.Farad)).Problems());
}
