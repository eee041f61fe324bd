using System.Net;
using Microsoft.AspNetCore.Builder;
using Xunit;

namespace Triage.Service.Tests;

/// <summary>Who may come in, and what a browser may do.</summary>
public class AccessTests(SharedBench shared) : IClassFixture<SharedBench>
{
    private readonly ServedBench bench = shared.Bench;

    [Theory]
    [InlineData("0.0.0.0")]
    [InlineData("192.168.1.20")]
    [InlineData("::")]
    [InlineData("bench.example")]
    public async Task Only_this_machine_is_served_and_the_reason_is_said(string address)
    {
        var refused = Assert.Throws<CannotServeException>(() => BenchServer.Build(bench.Live, new() { Address = address }));
        Assert.Contains(address, refused.Message);
        Assert.Contains("--phone", refused.Message);
    }

    [Fact]
    public async Task A_port_in_use_is_named_with_what_to_do()
    {
        var options = new ServerOptions { Port = bench.Address.Port };
        await using WebApplication second = BenchServer.Build(bench.Live, options);
        var refused = await Assert.ThrowsAsync<CannotServeException>(() => BenchServer.StartAsync(second, options, TestContext.Current.CancellationToken));
        Assert.Contains($"Port {bench.Address.Port} is in use", refused.Message);
        Assert.Contains("--port", refused.Message);
    }

    [Theory]
    [InlineData("localhost", HttpStatusCode.OK)]
    [InlineData("127.0.0.1", HttpStatusCode.OK)]
    [InlineData("[::1]", HttpStatusCode.OK)]
    [InlineData("attacker.example", HttpStatusCode.MisdirectedRequest)]
    [InlineData("localhost.attacker.example", HttpStatusCode.MisdirectedRequest)]
    public async Task Another_name_for_this_machine_is_turned_away(string host, HttpStatusCode expected)
    {
        using var client = new Client(bench.Address);
        var request = new HttpRequestMessage(HttpMethod.Get, "/health") { Headers = { Host = host } };
        Assert.Equal(expected, (await client.Http.SendAsync(request, TestContext.Current.CancellationToken)).StatusCode);
    }

    /// <summary>Whatever a page of somebody else sends, with whatever body: the job stays as it is.</summary>
    [Theory]
    [InlineData("cross-site", "https://attacker.example", null)]
    [InlineData("cross-site", "null", "text/plain")]
    [InlineData("same-site", "http://127.0.0.1:1", "application/json")]
    [InlineData(null, "https://attacker.example", "application/json")]
    [InlineData(null, "null", "application/x-www-form-urlencoded")]
    public async Task A_page_of_another_origin_writes_nothing(string? site, string origin, string? type)
    {
        using var client = new Client(bench.Address);
        var before = (await client.Get("/api/jobs/2026-021")).ToString();
        foreach (var path in new[] { "/api/jobs/2026-021/line", "/api/jobs/2026-021/counter-closed", "/api/jobs/2026-021/waiting", "/api/jobs", "/jobs/2026-021/line" })
        {
            using var request = new HttpRequestMessage(path.EndsWith("waiting", StringComparison.Ordinal) ? HttpMethod.Delete : HttpMethod.Post, path);
            request.Headers.Add("Origin", origin);
            if (site is not null)
                request.Headers.Add("Sec-Fetch-Site", site);
            request.Content = type is null ? null : new StringContent("{\"text\":\"x\"}", System.Text.Encoding.UTF8, type);
            using var answer = await client.Http.SendAsync(request, TestContext.Current.CancellationToken);
            Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        }

        Assert.Equal(before, (await client.Get("/api/jobs/2026-021")).ToString());
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/notes/none")]
    [InlineData("/bench.css")]
    public async Task Only_the_script_of_the_bench_itself_may_run(string path)
    {
        using var client = new Client(bench.Address);
        var rules = (await client.Send(HttpMethod.Get, path)).Headers.GetValues("Content-Security-Policy").Single();
        Assert.Contains("default-src 'none'", rules);
        Assert.Contains("script-src 'self';", rules);
        Assert.DoesNotContain("unsafe", rules);
        Assert.DoesNotContain("unsafe-inline", rules);
    }

    /// <summary>The budget of the one style sheet.</summary>
    [Fact]
    public async Task The_style_sheet_is_small()
    {
        using var client = new Client(bench.Address);
        var sheet = await client.Http.GetByteArrayAsync("/bench.css", TestContext.Current.CancellationToken);
        Assert.InRange(sheet.Length, 1_000, 15_000);
    }
}
