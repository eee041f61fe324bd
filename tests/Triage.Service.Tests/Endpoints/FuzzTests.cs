using Triage.Service.Tests.Pairing;
using Xunit;

namespace Triage.Service.Tests.Endpoints;

/// <summary>Calls made up over every operation of the OpenAPI document: no answer is a 500, and a refusal leaves the book as it was, byte for byte.</summary>
public sealed class FuzzTests(SharedBench shared) : IClassFixture<SharedBench>
{
    /// <summary>Whatever else the machine does meanwhile, nothing takes this long.</summary>
    private static readonly TimeSpan Hanging = TimeSpan.FromSeconds(30);

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

    /// <summary>Calls that once were answered with a 500, wrote though they were refused, or hung.</summary>
    [Fact]
    public async Task What_failed_once_is_answered_now()
    {
        var kept = await File.ReadAllLinesAsync(Path.Combine(ServedBench.Knowledge, "../tests/fuzz/api.jsonl"), TestContext.Current.CancellationToken);
        Assert.NotEmpty(kept);
        await Sent(kept.Select(SentCall.Read));
    }

    private async Task Fuzz(int seed, int calls)
    {
        using var client = new Client(shared.Bench.Address);
        var (random, document) = (new Random(seed), await client.Get("/openapi/v1.json"));
        var (made, forms) = (new MadeUpCalls(document, random), new MadeUpForms(random));
        await Sent(Enumerable.Range(0, calls).Select(_ => random.Next(8) == 0 ? forms.Next() : made.Next()));
    }

    /// <summary>A call that fails is said as the line to keep.</summary>
    private async Task Sent(IEnumerable<SentCall> calls)
    {
        using var http = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = shared.Bench.Address, Timeout = Hanging };
        var token = TestPhone.TokenField.Match(await http.GetStringAsync("/settings", TestContext.Current.CancellationToken)).Groups[1].Value;
        var (book, failed) = (Book(), new List<string>());
        foreach (var call in calls)
        {
            using var request = call.Request(token);
            using var answer = await Answered(http, request, call);
            var status = (int)answer.StatusCode;
            // 503 is what a note that cannot be written answers
            if (status is >= 500 and not 503)
                failed.Add($"{status}: {call}\n{string.Join('\n', shared.Bench.Log.TakeLast(3))}");
            var now = Book();
            if (status >= 400 && !now.SequenceEqual(book))
                failed.Add($"{status}, and written all the same: {call}");
            book = now;
        }

        Assert.True(failed.Count == 0, string.Join("\n\n", failed));
    }

    private static async Task<HttpResponseMessage> Answered(HttpClient http, HttpRequestMessage request, SentCall call)
    {
        try
        {
            return await http.SendAsync(request, TestContext.Current.CancellationToken);
        }
        catch (OperationCanceledException e) when (e.InnerException is TimeoutException)
        {
            throw new TimeoutException($"no answer: {call}", e);
        }
    }

    /// <summary>Each file with its size and the moment it was last written.</summary>
    private List<(string File, long Size, long Written)> Book() =>
        [.. new DirectoryInfo(shared.Bench.DemoFolder).EnumerateFiles("*", SearchOption.AllDirectories).Where(f => !f.FullName.Contains("/.bench/", StringComparison.Ordinal))
            .OrderBy(f => f.FullName, StringComparer.Ordinal).Select(f => (f.FullName, f.Length, f.LastWriteTimeUtc.Ticks))];
}
