using System.Collections.Immutable;
using System.Text.Json;
using Triage.Notes.Kinds;
using Xunit;

namespace Triage.Workshop.Tests.Published;

/// <summary>Networks of the literature, entered as notes and answered by the product. Expected values: worked.json, with its sources.</summary>
public sealed class PublishedNetworksTest
{
    private static readonly DateTimeOffset Any = new(2026, 1, 1, 0, 0, 0, TimeSpan.Zero);

    private static readonly Dictionary<string, JsonElement> Worked = JsonDocument
        .Parse(File.ReadAllText(Path.Combine(Repository.Root, "tests", "data", "worked.json"))).RootElement.GetProperty("entries").EnumerateArray()
        .ToDictionary(e => e.GetProperty("id").GetString()!, e => e.GetProperty("expected"));

    [Fact]
    public async Task A_break_in_given_that_both_neighbours_call()
    {
        var causes = await Ask("burglary", "john-calls=yes", "mary-calls=yes");
        Assert.Equal(Worked["burglary"].GetProperty("P_B").GetDouble(), causes["burglary-break-in"], 1e-12);
    }

    [Fact]
    public async Task A_positive_screening_test()
    {
        var causes = await Ask("screening", "test=yes");
        Assert.Equal(Worked["screening"].GetProperty("posterior").GetDouble(), causes["screening-disease"], 1e-12);
    }

    [Theory]
    [InlineData(0, null)]
    [InlineData(1, "yes")]
    [InlineData(2, "no")]
    public async Task The_chest_clinic(int entry, string? xray)
    {
        string[] seen = ["visited=yes", "dyspnoea=yes", .. xray is null ? Array.Empty<string>() : [$"xray={xray}"]];
        var causes = await Ask("asia", seen);
        var expected = Worked["asia"][entry].GetProperty("posterior");
        Assert.Equal(expected.GetProperty("tub").GetDouble(), causes["asia-tuberculosis"], 1e-12);
        Assert.Equal(expected.GetProperty("lung").GetDouble(), causes["asia-lung-cancer"], 1e-12);
        Assert.Equal(expected.GetProperty("bronc").GetDouble(), causes["asia-bronchitis"], 1e-12);
    }

    private static async Task<Dictionary<string, double>> Ask(string network, params string[] seen)
    {
        await using var live = LiveBench.Open(new()
        {
            Books = [new(network, Path.Combine(Repository.Root, "tests", "cases", "published", network))],
            Watch = false,
        });
        Assert.Empty(live.Current.Problems);
        var job = new Job("asked", "asked")
        {
            Class = network,
            Log = [.. seen.Select(s => s.Split('=')).Select(s => new Saw(Any, $"{network}-{s[0]}", s[1]))],
        };
        return live.Current.AnswerFor(job).Answer!.Causes.ToDictionary(c => c.Fault, c => c.Probability);
    }
}
