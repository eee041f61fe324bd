using System.Text.Json;
using Xunit;

namespace Triage.Service.Tests.Endpoints;

/// <summary>Calls made up over every operation of the OpenAPI document: no answer is a 500, and a refusal leaves the book as it was, byte for byte.</summary>
public sealed class FuzzTests(SharedBench shared) : IClassFixture<SharedBench>
{
    [Theory]
    [InlineData(1, 700)]
    public Task Calls_made_up_are_answered_or_refused(int seed, int calls) => Fuzz(seed, calls);

    [Theory]
    [InlineData(2, 10_000)]
    [InlineData(3, 10_000)]
    [Trait("run", "thorough")]
    public Task Twenty_thousand_calls_made_up_are_answered_or_refused(int seed, int calls) => Fuzz(seed, calls);

    /// <summary>Entries that say nothing: what the step is about is missing.</summary>
    [Theory]
    [InlineData("held", "{}")]
    [InlineData("opened", "{}")]
    [InlineData("swaps", "{\"effect\":\"works\"}")]
    [InlineData("waiting", "{}")]
    [InlineData("taken-off", "{}")]
    [InlineData("rounds", "{\"round\":\"keyboard-outside-round\",\"rows\":[null]}")]
    [InlineData("build", "{\"traits\":{\"supply\":null}}")]
    [InlineData("saw", "null")]
    [InlineData("line", "{\"text\":null}")]
    public async Task What_a_step_is_about_has_to_be_said(string step, string body)
    {
        var before = Book();
        using var http = new HttpClient { BaseAddress = shared.Bench.Address };
        using var content = new StringContent(body, System.Text.Encoding.UTF8, "application/json");
        using var answer = await http.PostAsync($"/api/jobs/2026-021/{step}", content, TestContext.Current.CancellationToken);
        Assert.Equal(400, (int)answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        Assert.Equal(before, Book());
    }

    private async Task Fuzz(int seed, int calls)
    {
        using var http = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = shared.Bench.Address };
        var document = JsonDocument.Parse(await http.GetStringAsync("/openapi/v1.json", TestContext.Current.CancellationToken)).RootElement;
        var fuzzed = new FuzzedCall(document, new(seed));
        var book = Book();
        for (var i = 0; i < calls; i++)
        {
            using var request = fuzzed.Next();
            using var answer = await http.SendAsync(request, TestContext.Current.CancellationToken);
            var status = (int)answer.StatusCode;
            // 503 is what a note that cannot be written answers
            Assert.True(status is < 500 or 503, $"call {i} of seed {seed} answers {status}: {fuzzed.Said}\n{await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)}\n{string.Join('\n', shared.Bench.Log.TakeLast(3))}");
            var now = Book();
            Assert.True(status < 400 || now.SequenceEqual(book), $"call {i} of seed {seed} answers {status} and writes all the same: {fuzzed.Said}");
            book = now;
        }
    }

    /// <summary>Each file with its size and the moment it was last written.</summary>
    private List<(string File, long Size, long Written)> Book() =>
        [.. new DirectoryInfo(shared.Bench.DemoFolder).EnumerateFiles("*", SearchOption.AllDirectories).Where(f => !f.FullName.Contains("/.bench/", StringComparison.Ordinal))
            .OrderBy(f => f.FullName, StringComparer.Ordinal).Select(f => (f.FullName, f.Length, f.LastWriteTimeUtc.Ticks))];
}
