using System.Net;
using Triage.Service.Tests.Pairing;
using Xunit;

namespace Triage.Service.Tests.Pages;

/// <summary>What a note said before, in the pages and over JSON.</summary>
public sealed class HistoryPagesTests(SharedBench shared) : IClassFixture<SharedBench>, IDisposable
{
    private readonly ServedBench bench = shared.Bench;
    private readonly HttpClient browser = new(new HttpClientHandler { AllowAutoRedirect = false, CookieContainer = new() }) { BaseAddress = shared.Bench.Address };

    public void Dispose() => browser.Dispose();

    [Fact]
    public async Task A_version_is_shown_with_what_it_changes_and_brought_back()
    {
        var (job, file, before) = Job();
        Assert.Null(bench.Live.Steps.Line(job, "zz lid off").Refused);

        var list = await Page($"/notes/{job}/history");
        var address = list.Split($"href=\"/notes/{job}/history/")[1].Split('"')[0];
        var version = await Page($"/notes/{job}/history/{address}");
        Assert.Contains("zz lid off", version.Split("<del>")[^1].Split("</del>")[0]);
        Assert.Equal(HttpStatusCode.SeeOther, (await Send($"/notes/{job}/history/{address}", version, ("since", Field(version, "since")))).StatusCode);

        Assert.Equal(before, await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken));
        Assert.Equal(HttpStatusCode.Conflict, (await Send($"/notes/{job}/history/{address}", version, ("since", Field(version, "since")))).StatusCode);
    }

    [Fact]
    public async Task Erasing_asks_whether_it_is_meant()
    {
        var (job, _, _) = Job();
        Assert.Null(bench.Live.Steps.Line(job, "lid off").Refused);
        var page = await Page($"/notes/{job}/history");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await Send($"/notes/{job}/history", page)).StatusCode);
        Assert.NotEmpty(bench.Live.History.Of(job)!.Versions);
        Assert.Equal(HttpStatusCode.SeeOther, (await Send($"/notes/{job}/history", page, ("sure", "yes"))).StatusCode);

        Assert.Empty(bench.Live.History.Of(job)!.Versions);
        Assert.Contains("Nothing is kept of it", await Page($"/notes/{job}/history"));
    }

    [Fact]
    public async Task A_form_from_elsewhere_brings_nothing_back_and_erases_nothing()
    {
        var (job, file, _) = Job();
        Assert.Null(bench.Live.Steps.Line(job, "lid off").Refused);
        var (before, past) = (await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken), bench.Live.History.Of(job)!);

        Assert.Equal(HttpStatusCode.Forbidden, (await Send($"/notes/{job}/history/{past.Versions[0].Version}", "", ("since", past.Now))).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await Send($"/notes/{job}/history", "", ("sure", "yes"))).StatusCode);

        Assert.Equal(before, await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken));
        Assert.Single(bench.Live.History.Of(job)!.Versions);
    }

    [Fact]
    public async Task Programs_list_read_bring_back_and_erase()
    {
        using var client = new Client(bench.Address);
        var (job, file, before) = Job();
        await client.Do($"/api/jobs/{job}/line", new { text = "lid off" });
        var past = await client.Get($"/api/notes/{job}/history");
        var (version, now) = (past.GetProperty("versions")[0].GetProperty("version").GetString()!, past.GetProperty("now").GetString()!);

        Assert.Equal(before, (await client.Get($"/api/notes/{job}/history/{version}")).GetProperty("text").GetString());
        Assert.Equal(HttpStatusCode.Conflict, (await client.Post($"/api/notes/{job}/history/{version}", new { version = "older" })).StatusCode);
        Assert.True((await client.Do($"/api/notes/{job}/history/{version}", new { version = now })).GetProperty("written").GetBoolean());
        Assert.Equal(before, await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken));
        Assert.Equal(HttpStatusCode.NoContent, (await client.Send(HttpMethod.Delete, $"/api/notes/{job}/history")).StatusCode);
        Assert.Equal(0, (await client.Get($"/api/notes/{job}/history")).GetProperty("versions").GetArrayLength());
        Assert.Equal(HttpStatusCode.NotFound, (await client.Send(HttpMethod.Get, $"/api/notes/{job}/history/{version}")).StatusCode);
    }

    private (string Id, string File, string Text) Job()
    {
        var job = bench.Live.Steps.TakeIn(new() { Machine = "Quillander W-200", Complaint = "screen very faint" }).Job!;
        var file = Path.Combine(bench.DemoFolder, job.Place.Path);
        return (job.Id, file, File.ReadAllText(file));
    }

    private async Task<string> Page(string path) => await browser.GetStringAsync(path, TestContext.Current.CancellationToken);

    private static string Field(string page, string name) => page.Split($"name=\"{name}\" value=\"")[1].Split('"')[0];

    private async Task<HttpResponseMessage> Send(string path, string page, params (string Name, string Value)[] fields)
    {
        using var body = new FormUrlEncodedContent([new("__RequestVerificationToken", TestPhone.TokenField.Match(page).Groups[1].Value), .. fields.Select(f => KeyValuePair.Create(f.Name, f.Value))]);
        return await browser.PostAsync(path, body, TestContext.Current.CancellationToken);
    }
}
