using Triage.Reasoning.Learning;
using Xunit;

namespace Triage.Reasoning.Tests.Learning;

/// <summary>
/// Failures of ten power plant pumps and the thousand hours of operation (Gaver and O'Muircheartaigh 1987; George, Makov and Smith 1993; the pumps
/// example of BUGS, volume 1; data and results from memory). There the rates are Gamma(α, β) with posterior means α = 0.70 and β = 0.93. How soon
/// faults come back is learned by the same conjugate rule, mean time (β + t) / (α + x), where nothing is cured.
/// </summary>
public class PumpsTests
{
    const double Alpha = 0.70, Beta = 0.93;

    [Theory]
    [InlineData(5, 94.3, 0.0599)]
    [InlineData(1, 15.7, 0.1015)]
    [InlineData(5, 62.9, 0.0891)]
    [InlineData(14, 126, 0.1160)]
    [InlineData(3, 5.24, 0.6070)]
    [InlineData(19, 31.4, 0.6090)]
    [InlineData(1, 1.05, 0.8940)]
    [InlineData(1, 1.05, 0.8950)]
    [InlineData(4, 2.1, 1.590)]
    [InlineData(22, 10.5, 1.990)]
    public void RatesOfPumps_AreTheGammaPoissonOnes(int failures, double hours, double published)
    {
        JobRecord pump = SmallBench.Job("pump", "fuse-open") with { Tried = [.. Enumerable.Range(0, failures).Select(i => new TriedAction($"mend-{i}", true, false, hours / failures))] };

        double rate = 1 / Learner.Learn(SmallBench.Notes, [pump], new() { ComebackDays = new(Beta / Alpha, Alpha) }).Epoch.Comebacks.MeanDays;

        Assert.Equal((Alpha + failures) / (Beta + hours), rate, 1e-9);
        // α and β averaged over there, put in here
        Assert.InRange(rate / published, 0.95, 1.05);
    }
}
