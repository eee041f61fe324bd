using System.Numerics;
using System.Text.Json.Nodes;
using FsCheck.Xunit;
using Triage.Tools.SolveNetworks;
using Xunit;

namespace Triage.Reasoning.Tests.Inference;

/// <summary>The tool against exact sums, and what it makes of files that make no sense.</summary>
public sealed class SolveNetworksTest
{
    private const string Good = """
        {"instances":[{"id":"one","roots":[{"id":"a","states":["good","m1"],"prior":[0.9,0.1]}],
        "findings":[{"id":"f","leak":0.1,"links":[{"root":"a","mode":"m1","lambda":0.5}]}],
        "evidence":{"present":["f"],"absent":[],"likelihood":{}},"condition_any_faulty":false}]}
        """;

    [Fact]
    public void One_cause_of_one_finding()
    {
        // by hand: P(f) = 0.9 · 0.1 + 0.1 · (1 − 0.9 · 0.5)
        var answer = JsonNode.Parse(Answers.Of(Good))!["answers"]![0]!;
        Assert.Equal(0.145, (double)answer["p_evidence"]!, 1e-15);
        Assert.Equal(0.055 / 0.145, (double)answer["posterior"]!["a"]!["m1"]!, 1e-15);
    }

    /// <summary>To the tolerances that data/bn2o.md names: P(e) to 1e-11 relative, posteriors to 1e-12, contradictions exactly.</summary>
    [Property(MaxTest = 300, StartSize = 1000, EndSize = 1000000)]
    public void Random_instances_of_the_same_shape_are_the_exact_sum_over_every_state(int seed)
    {
        var exact = new RandomInstance(seed);
        exact.Solve();
        var answer = JsonNode.Parse(Answers.Of(exact.Json))!["answers"]![0]!;
        Assert.Equal(exact.Total.IsZero, (bool)answer["contradiction"]!);
        var evidence = Ratio(exact.Evidence, exact.Denominator);
        Assert.Equal(evidence, (double)answer["p_evidence"]!, 1e-11 * evidence);
        for (var r = 0; r < exact.Joint.Length && !exact.Total.IsZero; r++)
        {
            for (var s = 0; s < exact.Joint[r].Length; s++)
            {
                Assert.Equal(Ratio(exact.Joint[r][s], exact.Total), (double)answer["posterior"]![$"r{r}"]![RandomInstance.State(s)]!, 1e-12);
            }
        }
    }

    [Theory]
    [InlineData("\"instances\"", "\"cases\"", "There is no list \"instances\" at the top. Its shape is in tests/data/bn2o.md.")]
    [InlineData("0.9,0.1", "0.9,0.2", "Instance 1 (one): Root 'a': priors must lie in 0 … 1 and sum to 1.")]
    [InlineData("\"present\":[\"f\"]", "\"present\":[\"g\"]", "Instance 1 (one): It speaks of 'g', which it does not list.")]
    [InlineData("\"mode\":\"m1\"", "\"mode\":\"m2\"", "Instance 1 (one): It speaks of 'a/m2', which it does not list.")]
    [InlineData("\"lambda\":0.5", "\"lambda\":1.5", "Instance 1 (one): Finding 'f', root 'a': give one chance for each value, summing to 1.")]
    [InlineData("\"likelihood\":{}", "\"likelihood\":{\"a\":[1]}", "Instance 1 (one): Likelihood 0: give one non-negative number for each state of root 'a'.")]
    [InlineData("\"likelihood\":{}", "\"likelihood\":{\"a\":null}", "Instance 1 (one): There is a null among its roots, findings, links or likelihoods.")]
    public void What_makes_no_sense_is_named(string part, string instead, string message) =>
        Assert.Equal(message, Assert.Throws<InvalidDataException>(() => Answers.Of(Good.Replace(part, instead, StringComparison.Ordinal))).Message);

    [Theory]
    [InlineData("")]
    [InlineData("{\"instances\":[")]
    [InlineData("[]")]
    [InlineData("{\"instances\":[null]}")]
    [InlineData("{\"instances\":[{\"id\":\"x\"}]}")]
    [InlineData("{\"instances\":[{\"id\":7,\"roots\":\"none\"}]}")]
    public void What_is_not_a_file_of_instances_is_refused(string json) =>
        Assert.NotEmpty(Assert.Throws<InvalidDataException>(() => Answers.Of(json)).Message);

    /// <summary>The quotient to 64 bits, however small.</summary>
    private static double Ratio(BigInteger a, BigInteger b)
    {
        var shift = (int)(b.GetBitLength() - a.GetBitLength() + 64);
        return a.IsZero ? 0 : Math.ScaleB((double)(shift >= 0 ? (a << shift) / b : a / (b << -shift)), -shift);
    }
}
