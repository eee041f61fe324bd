using System.IO.Compression;
using System.Net;
using Triage.Service.Tests.Pairing;
using Xunit;

namespace Triage.Service.Tests.Pages;

/// <summary>A backup downloaded and restored, and files looked over, in the pages.</summary>
public sealed class KeepingPagesTests(SharedBench shared) : IClassFixture<SharedBench>, IDisposable
{
    private readonly ServedBench bench = shared.Bench;
    private readonly HttpClient browser = new(new HttpClientHandler { AllowAutoRedirect = false, CookieContainer = new() }) { BaseAddress = shared.Bench.Address };

    public void Dispose() => browser.Dispose();

    [Fact]
    public async Task A_backup_comes_down_and_goes_back_into_a_new_folder()
    {
        var zip = await browser.GetByteArrayAsync("/backup/file", TestContext.Current.CancellationToken);
        var note = Path.Combine("faults", "c77-battery-lead-chafed.md");

        var done = await Send(zip, "again");
        Assert.Equal(HttpStatusCode.OK, done.StatusCode);
        var folder = Path.Combine(Path.GetDirectoryName(bench.DemoFolder)!, "again");
        Assert.Equal(await File.ReadAllBytesAsync(Path.Combine(bench.DemoFolder, note), TestContext.Current.CancellationToken), await File.ReadAllBytesAsync(Path.Combine(folder, note), TestContext.Current.CancellationToken));
        Assert.Contains(folder, await done.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));

        Assert.Equal(HttpStatusCode.Forbidden, (await Send(zip, "again")).StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await Send(zip, "../out")).StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await Send(zip[..^200], "cut")).StatusCode);
        Assert.Equal(["again", "demo"], Directory.GetFileSystemEntries(Path.GetDirectoryName(folder)!).Select(Path.GetFileName).Order());
    }

    [Fact]
    public async Task Programs_get_the_same_file()
    {
        using var zip = new ZipArchive(await browser.GetStreamAsync("/api/backup", TestContext.Current.CancellationToken));
        Assert.NotNull(zip.GetEntry("manifest.sha256"));
        Assert.NotNull(zip.GetEntry("book/bench.yaml"));
    }

    [Fact]
    public async Task What_is_damaged_is_named_until_it_is_accepted()
    {
        await Verify();
        var job = bench.Live.Steps.TakeIn(new() { Machine = "Quillander W-200", Complaint = "screen very faint" }).Job!;
        File.Delete(Path.Combine(bench.DemoFolder, job.Place.Path));

        Assert.Contains($"The file of note {job.Id} is gone.", await Verify());
        Assert.Contains($"The file of note {job.Id} is gone.", await Verify("accept"));
        Assert.Contains("Nothing is damaged or missing", await Verify());
        bench.Live.Rescan();
    }

    [Fact]
    public async Task A_form_from_elsewhere_restores_nothing()
    {
        using var form = new MultipartFormDataContent { { new StringContent("elsewhere"), "name" }, { new ByteArrayContent([1, 2, 3]), "backup", "backup.zip" } };
        Assert.Equal(HttpStatusCode.Forbidden, (await browser.PostAsync("/backup", form, TestContext.Current.CancellationToken)).StatusCode);
    }

    private async Task<HttpResponseMessage> Send(byte[] zip, string name)
    {
        using var form = new MultipartFormDataContent { { new StringContent(await Token("/backup")), "__RequestVerificationToken" }, { new StringContent(name), "name" }, { new ByteArrayContent(zip), "backup", "backup.zip" } };
        return await browser.PostAsync("/backup", form, TestContext.Current.CancellationToken);
    }

    private async Task<string> Verify(string what = "")
    {
        using var form = new FormUrlEncodedContent([new("__RequestVerificationToken", await Token("/verify")), new("do", what)]);
        return WebUtility.HtmlDecode(await (await browser.PostAsync("/verify", form, TestContext.Current.CancellationToken)).Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }

    private async Task<string> Token(string page) => TestPhone.TokenField.Match(await browser.GetStringAsync(page, TestContext.Current.CancellationToken)).Groups[1].Value;
}
