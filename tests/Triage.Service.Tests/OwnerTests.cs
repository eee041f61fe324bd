using System.Net;
using Triage.Service.Owner;
using Xunit;

namespace Triage.Service.Tests;

/// <summary>On a machine with several users the bench is its owner's: whoever else sits at it, or runs a program on it, reads and writes nothing.</summary>
public sealed class OwnerTests(OwnerTests.Owned shared) : IClassFixture<OwnerTests.Owned>
{
    private readonly ServedBench bench = shared.Bench;

    [Theory]
    [InlineData("GET", "/", "text/html")]
    [InlineData("GET", "/jobs/2026-022", "text/html")]
    [InlineData("GET", "/phones", "text/html")]
    [InlineData("POST", "/phones/code", "text/html")]
    [InlineData("POST", "/in", "text/html")]
    [InlineData("GET", "/IN", "text/html")]
    [InlineData("GET", "/bench.js", "*/*")]
    [InlineData("GET", "/health", "*/*")]
    [InlineData("GET", "/openapi/v1.json", "*/*")]
    [InlineData("GET", "/api/jobs", "application/json")]
    [InlineData("POST", "/api/jobs/2026-023/line", "application/json")]
    [InlineData("DELETE", "/api/jobs/2026-023/waiting", "application/json")]
    public async Task A_stranger_on_the_same_machine_reads_and_writes_nothing(string method, string path, string accept)
    {
        using var stranger = new Client(bench.Address);
        foreach (var (head, value) in new[] { ("X-None", "x"), ("Cookie", "bench-owner=guessed"), ("Authorization", "Bearer guessed"), ("Cookie", $"bench-owner={shared.Key.Text}"), ("Authorization", $"Bearer {shared.Key.ForBrowsers}") })
        {
            using var request = new HttpRequestMessage(new(method), path) { Headers = { { "Accept", accept }, { head, value } } };
            request.Content = method == "GET" ? null : new StringContent("{\"text\":\"by a stranger\"}", System.Text.Encoding.UTF8, "application/json");
            using var answer = await stranger.Http.SendAsync(request, TestContext.Current.CancellationToken);
            Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
            var said = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
            Assert.Contains("triage address", said);
            Assert.DoesNotContain("Vrouwenvelder", said);
        }
    }

    [Fact]
    public async Task The_printed_address_lets_one_browser_in_once()
    {
        var address = bench.AnotherAddress();
        using var owner = new Client(address);
        Assert.Equal(HttpStatusCode.Unauthorized, (await owner.Send(HttpMethod.Get, "/")).StatusCode);
        var entered = await owner.Send(HttpMethod.Get, address.PathAndQuery);
        Assert.Equal((HttpStatusCode.SeeOther, "/"), (entered.StatusCode, entered.Headers.Location!.ToString()));
        var cookie = entered.Headers.GetValues("Set-Cookie").Single().ToLowerInvariant();
        Assert.All(["httponly", "samesite=strict", "path=/"], word => Assert.Contains(word, cookie.Split("; ")));
        Assert.Equal(HttpStatusCode.OK, (await owner.Send(HttpMethod.Get, "/settings")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await owner.Send(HttpMethod.Get, "/phones")).StatusCode);

        using var late = new Client(address);
        Assert.Equal(HttpStatusCode.Unauthorized, (await late.Send(HttpMethod.Get, address.PathAndQuery)).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await late.Send(HttpMethod.Get, "/settings")).StatusCode);
        // who is in already is led to the shelf, whatever became of the address
        Assert.Equal(HttpStatusCode.SeeOther, (await owner.Send(HttpMethod.Get, address.PathAndQuery)).StatusCode);

        bench.Clock.Advance(TimeSpan.FromSeconds(1));
        await bench.Restart();
        Assert.Equal(HttpStatusCode.OK, (await owner.Send(HttpMethod.Get, "/settings")).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await late.Send(HttpMethod.Get, address.PathAndQuery)).StatusCode);
    }

    [Fact]
    public async Task An_address_is_void_after_an_hour_or_when_anything_in_it_was_changed()
    {
        using var browser = new Client(bench.Address);
        var address = bench.AnotherAddress().PathAndQuery;
        Assert.Equal(HttpStatusCode.Unauthorized, (await browser.Send(HttpMethod.Get, address.Replace("once=1", "once=2", StringComparison.Ordinal))).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await browser.Send(HttpMethod.Get, OwnerKey.Of(null).Address(80, bench.Clock.GetUtcNow()).PathAndQuery)).StatusCode);
        bench.Clock.Advance(TimeSpan.FromMinutes(61));
        Assert.Equal(HttpStatusCode.Unauthorized, (await browser.Send(HttpMethod.Get, address)).StatusCode);
    }

    [Fact]
    public async Task A_program_shows_the_key_that_only_its_owner_can_read()
    {
        var file = OwnerKey.FileIn(shared.Folder);
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file));
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute, File.GetUnixFileMode(shared.Folder));
        }

        using var program = new Client(bench.Address);
        program.Http.DefaultRequestHeaders.Authorization = new("Bearer", await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken));
        await program.Do("/api/jobs/2026-023/line", new { text = "sent by a program of the owner" });
    }

    [Fact]
    public void A_key_that_others_could_have_read_is_made_anew()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "modes are Unix's");
        var folder = Directory.CreateTempSubdirectory("owner-").FullName;
        try
        {
            var first = OwnerKey.Of(folder);
            Assert.Equal(first.Text, OwnerKey.Of(folder).Text);
            if (!OperatingSystem.IsWindows())
                File.SetUnixFileMode(OwnerKey.FileIn(folder), UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead);
            Assert.Null(OwnerKey.Find(folder));
            Assert.NotEqual(first.Text, OwnerKey.Of(folder).Text);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    public sealed class Owned : SharedBench
    {
        public string Folder { get; } = Path.Combine(Directory.CreateTempSubdirectory("run-").FullName, "served");

        public OwnerKey Key { get; private set; } = null!;

        protected override Task<ServedBench> Start() => ServedBench.Start(owner: Key = OwnerKey.Of(Folder));

        public override async ValueTask DisposeAsync()
        {
            await base.DisposeAsync();
            Directory.Delete(Path.GetDirectoryName(Folder)!, recursive: true);
        }
    }
}
