using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Networks;
using Triage.Reasoning.Tests.Inference;
using Xunit;

namespace Triage.Reasoning.Tests.Networks;

/// <summary>Published and re-derived examples; sources are named in data/worked.json.</summary>
public sealed class WorkedExamplesTest
{
    private static readonly JsonArray Entries =
        JsonNode.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "data", "worked.json")))!["entries"]!.AsArray();

    private static readonly ImmutableArray<string> NoYes = ["no", "yes"];

    [Fact]
    public void Noisy_or_of_three_causes_and_four_findings()
    {
        var (inputs, expected) = Entry("noisy-or-3x4");
        var lambda = inputs["lambda_by_disease"]!;
        var network = new Network(
            [.. Enumerable.Range(0, 3).Select(d => PosteriorInferenceTest.Part($"d{d + 1}", (double)inputs["priors"]![d]!))],
            [.. Enumerable.Range(0, 4).Select(f => PosteriorInferenceTest.Two(
                $"f{f + 1}", (double)inputs["leaks"]![f]!, [.. Enumerable.Range(0, 3).Select(d => new Link(d, 1, Yes((double)lambda[d]![f]!)))]))])
        {
            SomethingIsWrong = false,
        };
        foreach (var answer in expected.AsArray())
        {
            var posterior = PosteriorInference.Of(network, new Evidence
            {
                Observations = [.. Seen(answer!["present"]!, 1), .. Seen(answer["absent"]!, 0)],
            });
            Assert.Equal((double)answer["p_evidence"]!, posterior.EvidenceProbability, 1e-14);
            for (var d = 0; d < 3; d++)
            {
                Assert.Equal((double)answer["posterior"]![d]!, posterior.Marginals[d][1], 1e-13);
            }
        }

        IEnumerable<Observation> Seen(JsonNode ids, int value) =>
            ids.AsArray().Select(id => new Observation(network.Findings.ToList().FindIndex(f => f.Id == (string)id!), value));
    }

    [Fact]
    public void Burglary_and_earthquake()
    {
        var (inputs, expected) = Entry("burglary");
        var alarm = inputs["P_A_given_BE"]!;
        var compound = CompoundRoot.Compile("house",
        [
            Part("B", (double)inputs["P_B"]!),
            Part("E", (double)inputs["P_E"]!),
            Part("A", 0) with
            {
                Table = new([0, 1], [.. new[] { "FF", "FT", "TF", "TT" }.Select(be => Yes((double)alarm[be]!))]),
            },
        ]);
        var network = new Network([compound.Root], [Calls("John", "P_J_given_A"), Calls("Mary", "P_M_given_A")]) { SomethingIsWrong = false };
        var posterior = PosteriorInference.Of(network, new Evidence { Observations = [new(0, 1), new(1, 1)] });
        Assert.Equal((double)expected["P_evidence"]!, posterior.EvidenceProbability, 1e-15);
        Assert.Equal((double)expected["P_B"]!, FaultMarginals.AtStart(network, posterior)["B"].Probability, 1e-13);

        Finding Calls(string who, string table) =>
            compound.Tabulate(who, NoYes, c => Yes((double)inputs[table]![c[2] == 1 ? "T" : "F"]!), 0);
    }

    [Fact]
    public void Asia_chest_clinic()
    {
        var (inputs, expected) = Entry("asia");
        var compound = CompoundRoot.Compile("patient",
        [
            Part("asia", (double)inputs["P_asia"]!),
            Part("smoke", (double)inputs["P_smoke"]!),
            Given("tub", 0, "asia"),
            Given("lung", 1, "smoke"),
            Given("bronc", 1, "smoke"),
        ]);
        var xray = inputs["P_xray"]!;
        var dysp = inputs["P_dysp"]!;
        var network = new Network(
            [compound.Root],
            [
                compound.Tabulate("asia", NoYes, c => Yes(c[0]), 0),
                compound.Tabulate("dysp", NoYes, c => Yes((double)dysp[$"{Either(c)},{(c[4] == 1 ? "bronc" : "no")}"]!), 0),
                compound.Tabulate("xray", NoYes, c => Yes((double)xray[Either(c)]!), 0),
            ])
        {
            SomethingIsWrong = false,
        };
        foreach (var answer in expected.AsArray())
        {
            var seen = answer!["evidence"]!.AsObject()
                .Select(e => new Observation(network.Findings.ToList().FindIndex(f => f.Id == e.Key), (bool)e.Value! ? 1 : 0));
            var posterior = PosteriorInference.Of(network, new Evidence { Observations = [.. seen] });
            Assert.Equal((double)answer["p_evidence"]!, posterior.EvidenceProbability, 1e-15);
            var faults = FaultMarginals.AtStart(network, posterior);
            Assert.All(answer["posterior"]!.AsObject(), p => Assert.Equal((double)p.Value!, faults[p.Key].Probability, 1e-13));
        }

        CompoundPart Given(string id, int parent, string when) => Part(id, 0) with
        {
            Table = new([parent], [Yes((double)inputs[$"P_{id}"]!["no"]!), Yes((double)inputs[$"P_{id}"]![when]!)]),
        };

        static string Either(ImmutableArray<int> c) => c[2] + c[3] > 0 ? "either" : "no";
    }

    [Fact]
    public void Screening_test_as_a_likelihood_and_as_a_finding()
    {
        var (inputs, expected) = Entry("screening");
        var (sensitivity, falsePositive) = ((double)inputs["sensitivity"]!, (double)inputs["false_positive"]!);
        var ill = PosteriorInferenceTest.Part("ill", (double)inputs["prior"]!);
        var test = new Finding("test", NoYes, Yes(falsePositive), [new Link(0, 1, Yes(sensitivity))]) { Nominal = true };
        var network = new Network([ill], [test]) { SomethingIsWrong = false };
        var finding = PosteriorInference.Of(network, new Evidence { Observations = [new(0, 1)] });
        var likelihood = PosteriorInference.Of(network, new Evidence { Likelihoods = [new(0, [falsePositive, sensitivity])] });
        Assert.Equal((double)expected["posterior"]!, finding.Marginals[0][1], 1e-15);
        Assert.Equal((double)expected["posterior"]!, likelihood.Marginals[0][1], 1e-15);
    }

    private static ImmutableArray<double> Yes(double p) => [1 - p, p];

    private static CompoundPart Part(string id, double own) => new(id, [new("good", []), new("yes", [id])], Yes(own));

    private static (JsonNode Inputs, JsonNode Expected) Entry(string id)
    {
        var entry = Entries.Single(e => (string)e!["id"]! == id)!;
        return (entry["inputs"]!, entry["expected"]!);
    }
}
