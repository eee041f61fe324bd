using System.Net;
using System.Text.RegularExpressions;
using Xunit;

namespace Triage.Service.Tests.Pages;

/// <summary>Forms without any script: what went through leads on, what was refused is shown again as typed.</summary>
public sealed partial class FormsTests(SharedBench shared) : IClassFixture<SharedBench>, IDisposable
{
    private readonly ServedBench bench = shared.Bench;
    private readonly HttpClient browser = new(new HttpClientHandler { AllowAutoRedirect = false, CookieContainer = new() }) { BaseAddress = shared.Bench.Address };

    public void Dispose() => browser.Dispose();

    [Fact]
    public async Task A_step_answers_with_the_page_to_look_at_next()
    {
        var response = await Post("/jobs/2026-023/line", ("text", "lid off, dust"), ("back", "recording"));
        Assert.Equal(HttpStatusCode.SeeOther, response.StatusCode);
        Assert.Equal("/jobs/2026-023#recording", response.Headers.Location!.ToString());
        Assert.Contains("lid off, dust", await browser.GetStringAsync("/jobs/2026-023", TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_refused_form_is_shown_again_with_what_was_typed()
    {
        var response = await Post("/jobs/2026-022/part", ("page", "parts"), ("part", "idler of the spare deck"), ("state", "ordered"), ("price", "four"), ("from", "the drawer"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, response.StatusCode);
        var page = await Text(response);
        Assert.Contains("The price “four” is no number.", page);
        Assert.Contains("value=\"idler of the spare deck\"", page);
        Assert.Contains("value=\"the drawer\"", page);
    }

    [Fact]
    public async Task A_form_from_before_a_restart_loses_nothing()
    {
        var response = await browser.PostAsync("/jobs/2026-023/line", new FormUrlEncodedContent([new("text", "typed before the restart"), new("about", "")]), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.Forbidden, response.StatusCode);
        var page = await Text(response);
        Assert.Contains("press the button again", page);
        Assert.Contains("value=\"typed before the restart\"", page);
    }

    [Fact]
    public async Task Taking_in_without_a_complaint_is_refused_on_the_page()
    {
        var response = await Post("/jobs", ("machine", "Corvane K-61"), ("complaint", ""));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, response.StatusCode);
        var page = await Text(response);
        Assert.Contains("No complaint was given.", page);
        Assert.Contains("value=\"Corvane K-61\"", page);
    }

    [Fact]
    public async Task A_very_long_complaint_is_refused_in_words_and_kept()
    {
        var response = await Post("/ask", ("machine", "Corvane K-61"), ("complaint", "hums " + new string('x', 100_000)));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, response.StatusCode);
        var page = await Text(response);
        Assert.Contains("20,000 are the most", page);
        Assert.Contains("hums xxxxx", page);
    }

    [Theory]
    [InlineData("/jobs/none", "There is no job “none”.")]
    [InlineData("/notes/none", "There is no note “none”.")]
    [InlineData("/nowhere", "Not Found.")]
    public async Task What_is_not_there_is_said_on_a_page(string path, string what)
    {
        var response = await browser.GetAsync(path, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, response.StatusCode);
        Assert.Contains(what, await Text(response));
    }

    [Fact]
    public async Task Two_ways_of_taking_back_the_same_entry_take_back_one()
    {
        var log = bench.Live.Current.Notes.Find<Notes.Kinds.Job>("2026-022")!.Log;
        var entry = (log.Length - 2).ToString(System.Globalization.CultureInfo.InvariantCulture);
        var at = log[^2].At.ToString("O");
        Assert.Equal(HttpStatusCode.OK, (await Post("/jobs/2026-022/undo", ("about", entry), ("at", at))).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await Post("/jobs/2026-022/undo", ("about", entry), ("at", at))).StatusCode);
        Assert.Equal(log.Length - 1, bench.Live.Current.Notes.Find<Notes.Kinds.Job>("2026-022")!.Log.Length);
    }

    [Fact]
    public async Task What_is_no_photo_is_refused_by_its_content()
    {
        using var body = new MultipartFormDataContent
        {
            { new StringContent(Token().Match(await browser.GetStringAsync("/settings", TestContext.Current.CancellationToken)).Groups[1].Value), "__RequestVerificationToken" },
            { new StringContent("lid off"), "text" },
            { new ByteArrayContent("<svg onload=alert(1)>"u8.ToArray()), "photo", "lid.png" },
        };
        var response = await browser.PostAsync("/jobs/2026-023/line", body, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, response.StatusCode);
        var page = await Text(response);
        Assert.Contains("neither JPEG, PNG nor WebP", page);
        Assert.Contains("value=\"lid off\"", page);
    }

    [Fact]
    public async Task No_page_of_a_job_is_heavy()
    {
        var jobs = bench.Live.Current.Notes.Jobs.OrderByDescending(j => j.Log.Length).ThenBy(j => j.Id, StringComparer.Ordinal).ToList();
        foreach (var job in jobs.Where(j => j.IsOpen).Concat(jobs.Where(j => !j.IsOpen).Take(LongestClosed)))
        {
            foreach (var page in Service.Jobs.JobPages.Of(job))
            {
                var bytes = await browser.GetByteArrayAsync(Service.Http.Addresses.Job(job.Id, page.Slug), TestContext.Current.CancellationToken);
                Assert.True(bytes.Length <= 100_000, $"{job.Id} {page.Name}: {bytes.Length} bytes");
            }
        }
    }

    private const int LongestClosed = 8;

    private async Task<HttpResponseMessage> Post(string path, params (string Name, string Value)[] fields)
    {
        var page = await browser.GetStringAsync("/settings", TestContext.Current.CancellationToken);
        var token = Token().Match(page).Groups[1].Value;
        return await browser.PostAsync(path, new FormUrlEncodedContent([new("__RequestVerificationToken", token), .. fields.Any(f => f.Name == "about") ? [] : new[] { KeyValuePair.Create("about", "") }, .. fields.Select(f => KeyValuePair.Create(f.Name, f.Value))]), TestContext.Current.CancellationToken);
    }

    private static async Task<string> Text(HttpResponseMessage response) =>
        WebUtility.HtmlDecode(await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex Token();
}
