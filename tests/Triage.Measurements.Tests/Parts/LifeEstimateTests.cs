using Triage.Measurements.Parts;
using Xunit;

namespace Triage.Measurements.Tests.Parts;

/// <summary>Doubling rules, common practice, no source.</summary>
public class LifeEstimateTests
{
    [Theory]
    [InlineData(105, 2000)]
    [InlineData(95, 4000)]
    [InlineData(65, 32000)]
    [InlineData(115, 1000)]
    public void AluminiumElectrolytic_DoublesForEveryTenDegreesLess(double celsius, double hours) =>
        Assert.Equal(hours, LifeEstimate.AluminiumElectrolytic(2000, 105, celsius), 6);

    [Fact]
    public void DoubleLayer_GainsFromLowerVoltageToo() =>
        Assert.Equal(1000 * 4 * 1.3 * 1.3, LifeEstimate.DoubleLayer(1000, 70, 50, 5.5, 5.3), 6);
}
