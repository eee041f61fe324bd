using System.Net;
using Triage.Notes;
using Triage.Notes.Kinds;
using Triage.Notes.Linting;
using Triage.Service.Tests.Pairing;
using Xunit;

namespace Triage.Service.Tests.Pages;

/// <summary>A machine comes in, things are taken back and put back, and what nobody wrote down yet gets a note. Without any script.</summary>
public sealed class TakingInTests(SharedBench shared) : IClassFixture<SharedBench>, IDisposable
{
    private readonly ServedBench bench = shared.Bench;
    private readonly HttpClient browser = new(new HttpClientHandler { AllowAutoRedirect = false, CookieContainer = new() }) { BaseAddress = shared.Bench.Address };

    public void Dispose() => browser.Dispose();

    [Fact]
    public async Task What_can_hurt_and_what_must_be_stopped_stands_before_the_form()
    {
        var page = await Text(await Post("/take-in", ("machine", "Corvane K-61"), ("complaint", ""), ("history", "ten years in a loft")));
        var kind = bench.Live.Current.Notes.Find<DeviceClass>("electronic-keyboard")!;
        Assert.All([.. kind.StopAtOnce.Select(s => s.Say), .. kind.Cautions.Select(c => c.Say)], said => Assert.InRange(page.IndexOf(said, StringComparison.Ordinal), 0, page.IndexOf("id=\"take-in\"", StringComparison.Ordinal)));
        Assert.Contains("ten years in a loft", page);
    }

    [Fact]
    public async Task All_that_the_owner_says_goes_into_the_job_in_one_go()
    {
        var response = await Post("/jobs", ("machine", "Corvane K-61"), ("complaint", "no sound"), ("history", "ten years in a loft\nopened once"), ("limit", "40"), ("may-erase", "no"), ("originals-back", "yes"), ("worth", "120,5"), ("owner", "H. Amsel"));
        Assert.Equal(HttpStatusCode.SeeOther, response.StatusCode);
        var job = JobOf(response.Headers.Location!.ToString().Split('/')[^1]);
        Assert.Equal(["ten years in a loft", "opened once"], job.History);
        Assert.Equal(new Consent(40, false, true), job.Consent);
        Assert.Equal(120.5, job.Worth);
    }

    [Fact]
    public async Task What_was_taken_back_can_be_put_back_where_it_was()
    {
        const string id = "2026-022";
        var before = JobOf(id).Log;
        var response = await Post($"/jobs/{id}/undo", ("about", "1"), ("at", before[1].At.ToString("O")));
        var page = await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Contains("Put it back", page);
        Assert.Equal(before.Length - 1, JobOf(id).Log.Length);
        var entry = WebUtility.HtmlDecode(page.Split("name=\"entry\" value=\"")[1].Split("\">")[0]);
        Assert.Equal(HttpStatusCode.SeeOther, (await Post($"/jobs/{id}/put-back", ("about", "1"), ("entry", entry.ReplaceLineEndings("\r\n")))).StatusCode);
        Assert.Equal(before.Select(e => bench.Live.Current.InWords(JobOf(id), e)), JobOf(id).Log.Select(e => bench.Live.Current.InWords(JobOf(id), e)));
        Assert.Equal(before.Select(e => e.At), JobOf(id).Log.Select(e => e.At));
    }

    [Theory]
    [InlineData("nothing")]
    [InlineData("---\nformat: 1\nkind: job\nid: x\nname: x\nlog:\n  - {saw: display\n---\n")]
    public async Task What_is_no_entry_is_not_put_back(string entry)
    {
        var before = JobOf("2026-022").Log.Length;
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await Post("/jobs/2026-022/put-back", ("about", "1"), ("entry", entry))).StatusCode);
        Assert.Equal(before, JobOf("2026-022").Log.Length);
    }

    [Fact]
    public async Task What_was_not_listed_gets_a_note_without_fault_in_ones_own_book()
    {
        const string id = "2026-022";
        await Listed($"/jobs/{id}/new-finding", ("name", "stripes across the glass"), ("says", "lines on the glass\nzebra glass"));
        await Listed($"/jobs/{id}/new-test", ("name", "Press the glass at its edge"), ("way", "provoke"), ("reveals", "stripes-across-the-glass"), ("power", "limited"), ("minutes", "2"), ("caution", "Glass splinters: wear goggles."), ("steps", "Press lightly.\nLook."));
        await Listed($"/jobs/{id}/new-fault", ("name", "Glass let go of its ribbon"), ("part", "flat-flex-joint"), ("fix", "Warm the ribbon and press it on"));

        var notes = bench.Live.Current.Notes;
        Note[] made = [notes.Find<Finding>("stripes-across-the-glass")!, notes.Find<Test>("press-the-glass-at-its-edge")!, notes.Find<Fault>("glass-let-go-of-its-ribbon")!];
        Assert.All(made, note =>
        {
            Assert.Equal("demo", note.Place.Book);
            Assert.Empty(bench.Live.Current.Problems.Where(p => p.Path == note.Place.Path && p.Severity != Severity.Hint));
        });
        Assert.Equal("Glass splinters: wear goggles.", Assert.Single(((Test)made[1]).Effort.Cautions).Say);
        var page = await browser.GetStringAsync($"/jobs/{id}/findings", TestContext.Current.CancellationToken);
        Assert.Contains("stripes across the glass", page);
    }

    [Fact]
    public async Task A_model_without_a_note_gets_one_and_the_job_is_of_it()
    {
        var taken = await Post("/jobs", ("machine", "Zorbelic 9"), ("complaint", "no sound at all"));
        var id = taken.Headers.Location!.ToString().Split('/')[^1];
        Assert.Null(JobOf(id).Device);
        await Listed($"/jobs/{id}/new-device", ("name", "Zorbelic 9"), ("maker", "Zorbelic"), ("class", "electronic-keyboard"));
        Assert.Equal("zorbelic-9", JobOf(id).Device);
        Assert.Equal("no sound at all", JobOf(id).Complaint);
        Assert.Contains("id=\"next\"", await browser.GetStringAsync($"/jobs/{id}", TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_name_that_is_listed_already_is_said_and_nothing_is_written()
    {
        var page = await Text(await Post("/jobs/2026-022/new-fault", ("page", "not-listed"), ("name", "Cells leaked"), ("fix", "clean it all")));
        Assert.Contains("is listed already, as cells-leaked", page);
        Assert.Contains("clean it all", page);
    }

    private Job JobOf(string id) => bench.Live.Current.Notes.Find<Job>(id)!;

    private async Task Listed(string path, params (string, string)[] fields)
    {
        var response = await Post(path, fields);
        Assert.True(response.StatusCode == HttpStatusCode.SeeOther, await Text(response));
    }

    private async Task<HttpResponseMessage> Post(string path, params (string Name, string Value)[] fields)
    {
        var token = TestPhone.TokenField.Match(await browser.GetStringAsync("/settings", TestContext.Current.CancellationToken)).Groups[1].Value;
        using var body = new FormUrlEncodedContent([new("__RequestVerificationToken", token), .. fields.Select(f => KeyValuePair.Create(f.Name, f.Value))]);
        return await browser.PostAsync(path, body, TestContext.Current.CancellationToken);
    }

    private static async Task<string> Text(HttpResponseMessage response) => WebUtility.HtmlDecode(await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
}
