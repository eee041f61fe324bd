using Xunit;

namespace Triage.Service.Tests.Endpoints;

public class OpenApiTests(SharedBench shared) : IClassFixture<SharedBench>
{
    /// <summary>What programs of others rely on stays: nothing is taken away, renamed or needed anew. What is added is no break.</summary>
    [Fact]
    public async Task What_was_promised_still_holds()
    {
        using var client = new Client(shared.Bench.Address);
        var holds = ApiPromise.Lines(await client.Get("/openapi/v1.json"));
        var promised = await File.ReadAllLinesAsync(Path.Combine(AppContext.BaseDirectory, "Endpoints/promised.txt"), TestContext.Current.CancellationToken);
        Assert.NotEmpty(promised);
        Assert.Empty(promised.Where(p => !Needs(p)).Except(holds));
        Assert.All(promised.Where(Needs), p => Assert.Empty(Fields(holds.FirstOrDefault(h => Name(h) == Name(p) && Needs(h), "")).Except(Fields(p))));

        static bool Needs(string line) => line.Contains(" needs ", StringComparison.Ordinal);
        static string Name(string line) => line.Split(' ')[0];
        static string[] Fields(string line) => line.Split(" needs ").Skip(1).SelectMany(f => f.Split(", ")).ToArray();
    }

    [Fact]
    public async Task Every_step_says_how_it_can_be_refused()
    {
        using var client = new Client(shared.Bench.Address);
        var paths = (await client.Get("/openapi/v1.json")).GetProperty("paths").EnumerateObject().Where(p => p.Name.StartsWith("/api/jobs/{id}/", StringComparison.Ordinal));
        Assert.All(paths.SelectMany(p => p.Value.EnumerateObject()).Where(o => o.Name != "get"), operation =>
        {
            foreach (var status in new[] { "403", "404", "409", "412", "422", "503" })
                Assert.True(operation.Value.GetProperty("responses").GetProperty(status).GetProperty("content").TryGetProperty("application/problem+json", out _));
        });
    }
}
