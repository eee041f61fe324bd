using System.Net;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using Triage.Service.Phones;
using Xunit;

namespace Triage.Service.Tests.Pairing;

/// <summary>Who comes in over the network: paired phones, and nobody else.</summary>
public sealed class PairingTests(PairingTests.WithPhones shared) : IClassFixture<PairingTests.WithPhones>
{
    /// <summary>A page that waits for no answer, as the shelf does.</summary>
    private const string Light = "/settings";

    private readonly ServedBench bench = shared.Bench;

    [Theory]
    [InlineData("GET", "/", "text/html", HttpStatusCode.SeeOther)]
    [InlineData("GET", "/jobs/2026-023", "text/html", HttpStatusCode.SeeOther)]
    [InlineData("POST", "/jobs/2026-023/line", "text/html", HttpStatusCode.SeeOther)]
    [InlineData("GET", "/phones", "text/html", HttpStatusCode.SeeOther)]
    [InlineData("POST", "/phones/code", "text/html", HttpStatusCode.SeeOther)]
    [InlineData("GET", "/Pair/", "text/html", HttpStatusCode.SeeOther)]
    [InlineData("GET", "/pair/../review", "text/html", HttpStatusCode.SeeOther)]
    [InlineData("GET", "/api/review", "text/html", HttpStatusCode.Unauthorized)]
    [InlineData("GET", "/api/review", "application/json", HttpStatusCode.Unauthorized)]
    [InlineData("POST", "/api/jobs", "application/json", HttpStatusCode.Unauthorized)]
    [InlineData("GET", "/openapi/v1.json", "*/*", HttpStatusCode.Unauthorized)]
    [InlineData("GET", "/health", "*/*", HttpStatusCode.Unauthorized)]
    [InlineData("GET", "/bench.js", "*/*", HttpStatusCode.Unauthorized)]
    [InlineData("GET", "/nothing-here", "*/*", HttpStatusCode.Unauthorized)]
    [InlineData("GET", "/pair", "text/html", HttpStatusCode.OK)]
    [InlineData("GET", "/bench.css", "text/css", HttpStatusCode.OK)]
    public async Task Without_a_session_only_the_pairing_page_and_its_style_are_shown(string method, string path, string accept, HttpStatusCode expected)
    {
        using var phone = new TestPhone(bench.Invite());
        var response = await phone.Send(new(method), path, accept);
        Assert.Equal(expected, response.StatusCode);
        if (expected == HttpStatusCode.SeeOther)
            Assert.Equal("/pair", response.Headers.Location!.ToString());
    }

    [Fact]
    public async Task A_phone_with_the_code_comes_in_and_stays_in_after_a_restart()
    {
        var invitation = bench.Invite();
        using var phone = new TestPhone(invitation);
        var paired = await phone.Pair(invitation.Code.ToLowerInvariant().Replace('-', ' '));
        Assert.Equal(HttpStatusCode.SeeOther, paired.StatusCode);
        var cookie = paired.Headers.GetValues("Set-Cookie").Single(c => c.StartsWith("__Host-bench-phone=", StringComparison.Ordinal)).ToLowerInvariant();
        Assert.All(["secure", "httponly", "samesite=strict", "path=/"], word => Assert.Contains(word, cookie.Split("; ")));
        Assert.Equal(HttpStatusCode.OK, (await phone.Get("/")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await phone.Get("/api/review", "application/json")).StatusCode);

        await bench.Restart();
        using var again = new TestPhone(bench.Invite());
        again.Cookies.Add(new Uri($"https://127.0.0.1:{bench.Invite().Address.Port}"), phone.Cookies.GetAllCookies());
        Assert.Equal(HttpStatusCode.OK, (await again.Get(Light)).StatusCode);
    }

    [Fact]
    public async Task Only_the_hash_of_the_secret_is_kept_and_only_the_owner_reads_it()
    {
        var invitation = bench.Invite();
        using var phone = new TestPhone(invitation);
        await phone.Pair(invitation.Code, "Wen's phone");
        var secret = phone.Cookies.GetAllCookies().Single(c => c.Name == "__Host-bench-phone").Value;
        var keys = Path.Combine(bench.DemoFolder, ".bench", "keys");
        var kept = await File.ReadAllTextAsync(Path.Combine(keys, "phones.json"), TestContext.Current.CancellationToken);
        Assert.Equal(43, secret.Length); // 256 bits in base64url
        Assert.DoesNotContain(secret, kept);
        Assert.Contains("2026-11-02", kept);
        foreach (var name in new[] { "phones.json", "certificate.pfx" })
        {
            if (!OperatingSystem.IsWindows())
                Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(Path.Combine(keys, name)));
        }
    }

    [Fact]
    public async Task A_code_holds_once()
    {
        var invitation = bench.Invite();
        using var first = new TestPhone(invitation);
        using var second = new TestPhone(invitation);
        await first.Pair(invitation.Code);
        Assert.Equal(HttpStatusCode.Forbidden, (await second.Pair(invitation.Code)).StatusCode);
        Assert.Equal(HttpStatusCode.SeeOther, (await second.Get("/")).StatusCode);
    }

    [Fact]
    public async Task A_code_older_than_ten_minutes_is_refused()
    {
        var invitation = bench.Invite();
        using var phone = new TestPhone(invitation);
        bench.Clock.Advance(TimeSpan.FromMinutes(10));
        Assert.Equal(HttpStatusCode.Forbidden, (await phone.Pair(invitation.Code)).StatusCode);
    }

    [Fact]
    public async Task After_five_wrong_codes_one_has_to_wait_a_minute()
    {
        var invitation = bench.Invite();
        using var phone = new TestPhone(invitation);
        for (var tries = 0; tries < 5; tries++)
            Assert.Contains("That is not the code", await Text(await phone.Pair("AAAAA-AAAAA")));
        Assert.Equal(HttpStatusCode.TooManyRequests, (await phone.Pair(invitation.Code)).StatusCode);
        bench.Clock.Advance(TimeSpan.FromMinutes(1));
        Assert.Equal(HttpStatusCode.SeeOther, (await phone.Pair(invitation.Code)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await phone.Get(Light)).StatusCode);
    }

    /// <summary>Somebody on the same network types nonsense for as long as they like; another address of theirs within their IPv6 network is the same one.</summary>
    [Fact]
    public void A_neighbour_cannot_void_the_code()
    {
        var clock = new FakeTimeProvider();
        var code = new PairingCode(clock);
        var (made, _) = code.Make();
        string[] neighbours = ["192.0.2.7", "::ffff:192.0.2.8", .. Enumerable.Range(0, 100).Select(n => FormattableString.Invariant($"2001:db8:0:1::{n}"))];
        var tried = Enumerable.Range(0, 1000).Select(n => code.Try("AAAAA-AAAAA", IPAddress.Parse(neighbours[n % neighbours.Length]))).ToList();
        Assert.Equal(3 * PairingCode.MostWrong, tried.Count(t => t == CodeTried.Wrong));
        Assert.All(tried, t => Assert.True(t is CodeTried.Wrong or CodeTried.TooOften));
        Assert.Equal(CodeTried.Right, code.Try(made, IPAddress.Parse("192.0.2.20")));
        Assert.Equal(CodeTried.Void, code.Try(made, IPAddress.Parse("192.0.2.20")));
    }

    [Fact]
    public async Task A_phone_shut_out_by_another_process_on_the_book_is_out_of_this_one_at_once()
    {
        var invitation = bench.Invite();
        using var phone = new TestPhone(invitation);
        await phone.Pair(invitation.Code, "left in a tram");
        Assert.Equal(HttpStatusCode.OK, (await phone.Get(Light)).StatusCode);

        await using var other = BenchServer.Build(bench.Live, new() { Port = 0 });
        var elsewhere = other.Services.GetRequiredService<PairedPhones>();
        elsewhere.Revoke(elsewhere.All.Single(p => p.Name == "left in a tram").Id);

        Assert.Equal(HttpStatusCode.SeeOther, (await phone.Get(Light)).StatusCode);
        // and pairing another does not bring it back
        var next = bench.Invite();
        using var second = new TestPhone(next);
        await second.Pair(next.Code, "the new one");
        Assert.Equal(HttpStatusCode.SeeOther, (await phone.Get(Light)).StatusCode);
        Assert.Contains(elsewhere.All, p => p.Name == "the new one");
    }

    [Fact]
    public async Task A_phone_that_was_shut_out_is_refused_at_once_and_after_a_restart()
    {
        var invitation = bench.Invite();
        using var phone = new TestPhone(invitation);
        await phone.Pair(invitation.Code, "lost phone");
        Assert.Equal(HttpStatusCode.Forbidden, (await phone.Get("/phones")).StatusCode);
        using var here = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = bench.Address };
        var page = await here.GetStringAsync("/phones", TestContext.Current.CancellationToken);
        Assert.Contains("lost phone", page);
        var id = System.Text.RegularExpressions.Regex.Match(page, "(?s)lost phone</strong>.*?name=\"phone\" value=\"([0-9a-f]+)\"").Groups[1].Value;
        var token = TestPhone.TokenField.Match(page).Groups[1].Value;
        var shut = await here.PostAsync("/phones/out", new FormUrlEncodedContent([new("__RequestVerificationToken", token), new("phone", id)]), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.SeeOther, shut.StatusCode);
        Assert.Equal(HttpStatusCode.SeeOther, (await phone.Get("/")).StatusCode);

        await bench.Restart();
        using var again = new TestPhone(bench.Invite());
        again.Cookies.Add(new Uri("https://127.0.0.1"), phone.Cookies.GetAllCookies());
        Assert.Equal(HttpStatusCode.SeeOther, (await again.Get("/")).StatusCode);
    }

    [Fact]
    public async Task A_paired_phone_needs_the_benchs_own_address_and_forms_of_its_own_pages()
    {
        var invitation = bench.Invite();
        using var phone = new TestPhone(invitation);
        await phone.Pair(invitation.Code);
        Assert.Equal(HttpStatusCode.MisdirectedRequest, (await phone.Send(HttpMethod.Get, "/", host: "attacker.example")).StatusCode);
        Assert.Equal(HttpStatusCode.MisdirectedRequest, (await phone.Send(HttpMethod.Get, "/", host: "10.255.255.1")).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await phone.Send(HttpMethod.Post, "/jobs/2026-023/line", fields: [("text", "not from a page")])).StatusCode);
    }

    [Fact]
    public async Task A_code_without_its_pages_form_is_not_even_tried()
    {
        var invitation = bench.Invite();
        using var phone = new TestPhone(invitation);
        Assert.Equal(HttpStatusCode.Forbidden, (await phone.Send(HttpMethod.Post, "/pair", fields: [("code", invitation.Code)])).StatusCode);
        Assert.Equal(HttpStatusCode.SeeOther, (await phone.Pair(invitation.Code)).StatusCode);
    }

    [Fact]
    public async Task The_computer_itself_needs_no_session()
    {
        using var here = new Client(bench.Address);
        Assert.Equal(HttpStatusCode.OK, (await here.Send(HttpMethod.Get, Light)).StatusCode);
    }

    [Fact]
    public async Task A_list_that_cannot_be_read_lets_nobody_in_and_says_so()
    {
        await using var damaged = await ServedBench.Start(demo =>
        {
            Directory.CreateDirectory(Path.Combine(demo, ".bench", "keys"));
            File.WriteAllText(Path.Combine(demo, ".bench", "keys", "phones.json"), "[{");
        });
        var refused = Assert.Throws<CannotServeException>(() => BenchServer.Build(damaged.Live, new() { Port = 0, Phone = new PhoneOptions { Port = 0 } }));
        Assert.Contains("phones.json, cannot be read. Delete it", refused.Message);
    }

    private static Task<string> Text(HttpResponseMessage response) => response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);

    public sealed class WithPhones : SharedBench
    {
        protected override Task<ServedBench> Start() => ServedBench.Start(phone: new() { Port = 0 });
    }
}
