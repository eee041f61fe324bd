using System.Text.Json;
using Snapshooter.Xunit3;
using Xunit;

namespace Triage.Service.Tests.Endpoints;

public class OpenApiTests
{
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true };

    /// <summary>The document is a promise to programs: a change of it is seen here first.</summary>
    [Fact]
    public async Task The_document_says_what_it_said()
    {
        await using var bench = await ServedBench.Start();
        using var client = new Client(bench.Address);
        var document = await client.Get("/openapi/v1.json");
        Snapshot.Match(JsonSerializer.Serialize(document, Indented).Split('\n'));
    }

    [Fact]
    public async Task Every_step_says_how_it_can_be_refused()
    {
        await using var bench = await ServedBench.Start();
        using var client = new Client(bench.Address);
        var paths = (await client.Get("/openapi/v1.json")).GetProperty("paths").EnumerateObject().Where(p => p.Name.StartsWith("/api/jobs/{id}/", StringComparison.Ordinal));
        Assert.All(paths.SelectMany(p => p.Value.EnumerateObject()).Where(o => o.Name != "get"), operation =>
        {
            foreach (var status in new[] { "403", "404", "409", "412", "422", "503" })
                Assert.True(operation.Value.GetProperty("responses").GetProperty(status).GetProperty("content").TryGetProperty("application/problem+json", out _));
        });
    }
}
