using Triage.Reasoning.Learning;
using Xunit;
using static Triage.Reasoning.Tests.Learning.SmallBench;

namespace Triage.Reasoning.Tests.Learning;

/// <summary>Mixture cure: Boag 1949, Berkson and Gage 1952.</summary>
public class ComebacksTests
{
    [Fact]
    public void Fixed_GivenQuiet_GrowsFromTheChanceBeforehandToOne()
    {
        var comebacks = new Comebacks(30);

        Assert.Equal(0.7, comebacks.Fixed(0.7, 0), 12);
        Assert.Equal(0.7 / (0.7 + 0.3 * Math.Exp(-1)), comebacks.Fixed(0.7, 30), 12);
        Assert.Equal(1, comebacks.Fixed(0.7, 3000), 12);
    }

    [Fact]
    public void AQuietJob_CountsLessThanOneKnownToHold_AndMoreTheLongerItWasQuiet()
    {
        double none = Holds(0, null), week = Holds(7, null), year = Holds(365, null), held = Holds(0, true);

        Assert.Equal(0.5, none, 12);
        Assert.True(none < week && week < year && year < held);
        Assert.Equal(held, year, 0.005);
    }

    [Fact]
    public void ComebacksSooner_MakeAQuietMonthWorthMore()
    {
        JobRecord[] Back(double days) => [.. Enumerable.Range(0, 20).Select(i => Reset($"{i}", false, days))];

        Assert.True(Learn(Back(5)).Epoch.Comebacks.Fixed(0.5, 30) > Learn(Back(100)).Epoch.Comebacks.Fixed(0.5, 30));
    }

    static double Holds(double days, bool? held) => Learn(Reset("1", held, days)).Holds("cold-start", "regulator-short")!.Value.Mean;

    static JobRecord Reset(string id, bool? held, double days) => Job(id, "regulator-short") with { Tried = [new("cold-start", true, held, days)] };
}
