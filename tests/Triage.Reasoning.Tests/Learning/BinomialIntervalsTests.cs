using System.Text.Json;
using Triage.Reasoning.Learning;
using Xunit;

namespace Triage.Reasoning.Tests.Learning;

/// <summary>Values from the worked examples: Gelman et al.; Wilson 1927; Clopper and Pearson 1934; Brown, Cai and DasGupta 2001.</summary>
public class BinomialIntervalsTests
{
    [Theory]
    [InlineData("interval-4-of-20")]
    [InlineData("interval-18-of-20")]
    [InlineData("interval-4-of-200")]
    public void Intervals_OfAProportion_AreThePublishedOnes(string id)
    {
        var (inputs, expected) = Example(id);
        double x = inputs.GetProperty("x").GetDouble(), n = inputs.GetProperty("n").GetDouble(), level = inputs.GetProperty("level").GetDouble();

        AssertEnds(expected.GetProperty("wilson"), BinomialIntervals.Wilson(x, n, level));
        AssertEnds(expected.GetProperty("jeffreys"), BinomialIntervals.Jeffreys(x, n, level));
        AssertEnds(expected.GetProperty("clopper_pearson"), BinomialIntervals.ClopperPearson(x, n, level));
    }

    [Fact]
    public void Estimate_OfPlacentaPreviaBirths_HasThePublishedInterval()
    {
        var (inputs, expected) = Example("placenta-previa");
        double a = inputs.GetProperty("alpha").GetDouble(), b = inputs.GetProperty("beta").GetDouble();

        var estimate = new Estimate(a / (a + b), a + b);

        Assert.Equal(expected.GetProperty("mean").GetDouble(), estimate.Mean, 12);
        Assert.Equal(expected.GetProperty("lower").GetDouble(), estimate.Interval(0.95).Lower, 1e-8);
        Assert.Equal(expected.GetProperty("upper").GetDouble(), estimate.Interval(0.95).Upper, 1e-8);
    }

    [Fact]
    public void ClopperPearson_OfNoneInTwenty_IsTheZeroNumerator()
    {
        // Hanley and Lippman-Hand 1983: the exact upper end is 1 − 0.025^(1/n)
        Assert.Equal(new Interval(0, 1 - Math.Pow(0.025, 1 / 20.0)), BinomialIntervals.ClopperPearson(0, 20, 0.95), Near);
    }

    [Theory]
    [InlineData(30)]
    [InlineData(100)]
    [InlineData(1000)]
    public void UpperEnd_OfNoneInN_IsAboutThreeOverN(int n)
    {
        // rule of three, one-sided 95 % (Hanley and Lippman-Hand 1983), good from n = 30 on
        double upper = BinomialIntervals.ClopperPearson(0, n, 0.9).Upper;
        Assert.InRange(upper / (3.0 / n), 0.945, 1);
    }

    [Fact]
    public void Interval_WhoseDensityRisesTowardsZero_BeginsThere()
    {
        Interval interval = new Estimate(0.05, 4).Interval(0.9);

        Assert.Equal(0, interval.Lower);
        Assert.Equal(0.9, MathNet.Numerics.Distributions.Beta.CDF(0.2, 3.8, interval.Upper), 6);
    }

    [Fact]
    public void Level_OfOneHundredPercent_IsRefused()
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => new Estimate(0.5, 4).Interval(1));
        Assert.Contains("above 0 and below 1", error.Message, StringComparison.Ordinal);
    }

    static bool Near(Interval a, Interval b) => Math.Abs(a.Lower - b.Lower) < 1e-9 && Math.Abs(a.Upper - b.Upper) < 1e-9;

    static void AssertEnds(JsonElement expected, Interval actual)
    {
        Assert.Equal(expected[0].GetDouble(), actual.Lower, 6e-7);
        Assert.Equal(expected[1].GetDouble(), actual.Upper, 6e-7);
    }

    static (JsonElement Inputs, JsonElement Expected) Example(string id)
    {
        JsonElement root = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "data", "worked.json"))).RootElement;
        JsonElement entry = root.GetProperty("entries").EnumerateArray().Single(e => e.GetProperty("id").GetString() == id);
        return (entry.GetProperty("inputs"), entry.GetProperty("expected"));
    }
}
