using MathNet.Numerics.Distributions;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Networks;
using Xunit;

namespace Triage.Reasoning.Tests.Inference;

public sealed class CredibleIntervalsTest
{
    [Fact]
    public void Agree_roughly_with_sampling_every_number_from_its_distribution()
    {
        const double N = 60;
        var random = new Random(7);
        var network = Draw((p, _) => p);
        var evidence = new Evidence { Observations = [new(0, 1), new(1, 0), new(2, 1)] };
        var intervals = CredibleIntervals.Of(network, evidence);
        var drawn = Enumerable.Range(0, 4000)
            .Select(_ => PosteriorInference.Of(Draw((p, n) => Beta.Sample(random, p * n, (1 - p) * n)), evidence))
            .ToArray();
        for (var r = 0; r < 3; r++)
        {
            var sorted = drawn.Select(p => Logit(p.Marginals[r][1])).Order().ToArray();
            var interval = intervals.States[r][1];
            Assert.Equal(sorted[sorted.Length / 20], Logit(interval.Lower), 0.3);
            Assert.Equal(sorted[sorted.Length * 19 / 20], Logit(interval.Upper), 0.3);
            Assert.Equal(interval.Upper, intervals.Faults[network.Roots[r].Id].Upper, 1e-12);
        }

        Network Draw(Func<double, double, double> of)
        {
            Root Part(string id, double prior) => PosteriorInferenceTest.Part(id, of(prior, 200)) with { PriorWeight = [200, 200] };
            Link Shows(int root, double chance) => Two(root, of(chance, N));
            Link Two(int root, double p) => new(root, 1, [1 - p, p]) { Weight = N };
            Finding F(string id, double leak, params Link[] links) =>
                PosteriorInferenceTest.Two(id, of(leak, 400), links) with { AmbientWeight = 400 };
            return new(
                [Part("a", 0.1), Part("b", 0.15), Part("c", 0.08)],
                [F("f", 0.03, Shows(0, 0.7), Shows(1, 0.4)), F("g", 0.05, Shows(1, 0.5), Shows(2, 0.6)), F("h", 0.04, Shows(0, 0.5), Shows(2, 0.8))]);
        }
    }

    [Fact]
    public void Exactly_known_numbers_leave_no_doubt()
    {
        var network = new Network([PosteriorInferenceTest.Part("a", 0.1), PosteriorInferenceTest.Part("b", 0.1)], []);
        var interval = CredibleIntervals.Of(network, Evidence.None).States[0][1];
        Assert.Equal(interval.Lower, interval.Upper, 1e-15);
    }

    [Fact]
    public void A_bystander_is_as_uncertain_as_its_prior()
    {
        var root = PosteriorInferenceTest.Part("a", 0.1) with { PriorWeight = [200, 200] };
        var network = new Network([root], []) { SomethingIsWrong = false };
        var interval = CredibleIntervals.Of(network, Evidence.None, 0.9).States[0][1];

        // Beta(20, 180), 5 % and 95 % quantiles; the logit is only nearly normal
        Assert.Equal(Beta.InvCDF(20, 180, 0.05), interval.Lower, 0.01);
        Assert.Equal(Beta.InvCDF(20, 180, 0.95), interval.Upper, 0.01);
    }

    private static double Logit(double p) => Math.Log(p / (1 - p));
}
