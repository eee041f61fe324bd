using System.Net;
using Triage.Notes.Kinds;
using Triage.Service.Tests.Pairing;
using Xunit;

namespace Triage.Service.Tests.Pages;

/// <summary>Notes and settings changed as text: checked first, nobody's newer work overwritten, the rest of the file left alone.</summary>
public sealed class TextPagesTests(SharedBench shared) : IClassFixture<SharedBench>, IDisposable
{
    private const string Note = "c77-battery-lead-chafed";

    private readonly ServedBench bench = shared.Bench;
    private readonly HttpClient browser = new(new HttpClientHandler { AllowAutoRedirect = false, CookieContainer = new() }) { BaseAddress = shared.Bench.Address };

    private string NoteFile => Path.Combine(bench.DemoFolder, "faults", $"{Note}.md");

    private string SettingsFile => Path.Combine(bench.DemoFolder, "bench.yaml");

    public void Dispose() => browser.Dispose();

    [Fact]
    public async Task A_note_changed_as_text_keeps_every_other_byte_and_is_known_at_once()
    {
        var before = await Disk(NoteFile);
        var page = await Page($"/notes/{Note}/text");
        Assert.Contains("Pull the red lead", WebUtility.HtmlDecode(page), StringComparison.OrdinalIgnoreCase);
        var response = await Send($"/notes/{Note}/text", page, ("text", before.Replace("pull the red lead", "pull both leads", StringComparison.Ordinal).ReplaceLineEndings("\r\n")));
        Assert.Equal(HttpStatusCode.SeeOther, response.StatusCode);
        Assert.Equal(before.Replace("pull the red lead", "pull both leads", StringComparison.Ordinal), await Disk(NoteFile));
        Assert.Contains("pull both leads", bench.Live.Current.Notes.Find<Fault>(Note)!.Body);
    }

    [Theory]
    [InlineData("kind: fault", "kind: folt", ":3:")]
    [InlineData("share: {p: 0.05", "share: {p: 0.05, p: 0.06", ":10:")]
    [InlineData("id: c77-battery-lead-chafed", "id: another-lead", "The id was changed")]
    public async Task A_text_with_an_error_is_not_written_and_the_place_is_said(string right, string wrong, string said)
    {
        var before = await Disk(NoteFile);
        var response = await Send($"/notes/{Note}/text", await Page($"/notes/{Note}/text"), ("text", before.Replace(right, wrong, StringComparison.Ordinal)));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, response.StatusCode);
        var page = await Text(response);
        Assert.Contains(said, page);
        Assert.Contains(wrong, page);
        Assert.Equal(before, await Disk(NoteFile));
    }

    [Fact]
    public async Task A_note_changed_meanwhile_in_an_editor_is_not_overwritten_and_both_texts_are_shown()
    {
        var page = await Page($"/notes/{Note}/text");
        var theirs = await Disk(NoteFile) + "\nTheirs: heard of twice.\n";
        await File.WriteAllTextAsync(NoteFile, theirs, TestContext.Current.CancellationToken);
        var response = await Send($"/notes/{Note}/text", page, ("text", theirs.Replace("Theirs", "Ours", StringComparison.Ordinal)));
        Assert.Equal(HttpStatusCode.Conflict, response.StatusCode);
        var shown = await Text(response);
        Assert.Contains("Ours: heard of twice.", shown);
        Assert.Contains("Theirs: heard of twice.", shown);
        Assert.Equal(theirs, await Disk(NoteFile));
    }

    [Fact]
    public async Task A_form_from_elsewhere_changes_no_text()
    {
        var before = await Disk(NoteFile);
        using var body = new FormUrlEncodedContent([new("text", "gone"), new("version", "x")]);
        Assert.Equal(HttpStatusCode.Forbidden, (await browser.PostAsync($"/notes/{Note}/text", body, TestContext.Current.CancellationToken)).StatusCode);
        Assert.Equal(before, await Disk(NoteFile));
    }

    [Fact]
    public async Task A_note_of_a_book_opened_for_reading_is_shown_only()
    {
        var page = await Page("/notes/backup-capacitor/text");
        Assert.Contains("opened for reading only", page);
        Assert.DoesNotContain("<textarea", page);
    }

    [Fact]
    public async Task Settings_change_by_field_and_comments_stay()
    {
        var before = await Disk(SettingsFile);
        var tools = before.Split("tools:\n")[1].Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => l.Trim()[2..]).Where(t => t != "hot air").Append("rework station");
        var response = await Send("/settings", await Page("/settings"), ("value-of-hour", "15,5"), ("cost-of-day", "0.5"), ("usual-worth", "80"), ("currency", "kr"), ("tools", string.Join("\r\n", tools)));
        Assert.Equal(HttpStatusCode.SeeOther, response.StatusCode);
        var expected = before.Replace("value-of-hour: 14  ", "value-of-hour: 15.5  ", StringComparison.Ordinal).Replace("  - hot air\n", "", StringComparison.Ordinal) + "  - rework station\n";
        Assert.Equal(expected, await Disk(SettingsFile));
        Assert.Equal(15.5, bench.Live.Current.Settings.ValueOfHour);
        Assert.Contains("rework station", bench.Live.Current.Settings.Tools!.Value);
    }

    [Theory]
    [InlineData("dear", "is no number")]
    [InlineData("-3", "less than nothing")]
    public async Task A_setting_that_cannot_be_is_refused_and_kept_as_typed(string typed, string said)
    {
        var before = await Disk(SettingsFile);
        var response = await Send("/settings", await Page("/settings"), ("value-of-hour", typed));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, response.StatusCode);
        var page = await Text(response);
        Assert.Contains(said, page);
        Assert.Contains($"value=\"{typed}\"", page);
        Assert.Equal(before, await Disk(SettingsFile));
    }

    [Fact]
    public async Task Settings_changed_meanwhile_are_not_overwritten()
    {
        var (before, page) = (await Disk(SettingsFile), await Page("/settings"));
        await File.AppendAllTextAsync(SettingsFile, "# theirs\n", TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.Conflict, (await Send("/settings", page, ("value-of-hour", "20"))).StatusCode);
        Assert.Equal(before + "# theirs\n", await Disk(SettingsFile));
        await File.WriteAllTextAsync(SettingsFile, before, TestContext.Current.CancellationToken);
    }

    [Fact]
    public async Task Books_are_listed_with_their_trust()
    {
        var page = WebUtility.HtmlDecode(await Page("/settings"));
        Assert.Contains("<strong>demo</strong>: our own, full weight; new notes go here", page);
        Assert.Contains("<strong>common</strong>: people we know, weight 0.5", page);
    }

    private static Task<string> Disk(string file) => File.ReadAllTextAsync(file, TestContext.Current.CancellationToken);

    private Task<string> Page(string path) => browser.GetStringAsync(path, TestContext.Current.CancellationToken);

    private async Task<HttpResponseMessage> Send(string path, string page, params (string Name, string Value)[] fields)
    {
        var version = page.Split("name=\"version\" value=\"")[1].Split('"')[0];
        using var body = new FormUrlEncodedContent([new("__RequestVerificationToken", TestPhone.TokenField.Match(page).Groups[1].Value), new("version", version), .. fields.Select(f => KeyValuePair.Create(f.Name, f.Value))]);
        return await browser.PostAsync(path, body, TestContext.Current.CancellationToken);
    }

    private static async Task<string> Text(HttpResponseMessage response) => WebUtility.HtmlDecode(await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
}
