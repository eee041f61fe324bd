using System.Net;
using System.Text.RegularExpressions;
using Triage.Notes.Kinds;
using Triage.Workshop.Jobs;
using Xunit;

namespace Triage.Service.Tests.Pages;

/// <summary>Apart and back together through the pages, without any script.</summary>
public sealed partial class StripDownTests(SharedBench shared) : IClassFixture<SharedBench>, IDisposable
{
    /// <summary>A portable machine comes apart in about this many steps (common practice, no source).</summary>
    private const int Steps = 25;

    private readonly HttpClient browser = new(new HttpClientHandler { AllowAutoRedirect = false, CookieContainer = new() }) { BaseAddress = shared.Bench.Address };

    /// <summary>A portable computer of its own for each test.</summary>
    private readonly string job = shared.Bench.Live.Steps.TakeIn(new() { Machine = "Quillander W-200", Complaint = "screen very faint" }).Job!.Id;

    public void Dispose() => browser.Dispose();

    /// <summary>What the class's note says to look at by the way stands there once something is open, not before.</summary>
    [Fact]
    public async Task What_is_worth_a_look_by_the_way_is_said_while_it_is_open()
    {
        Assert.DoesNotContain("While it is open", await Get());
        await Post("opened", ("about", "case"));
        Assert.Contains("While it is open", await Get());
        await Post("opened", ("about", "case"), ("shut", "yes"));
        Assert.DoesNotContain("While it is open", await Get());
    }

    [Fact]
    public async Task Twenty_five_steps_with_photos_go_back_on_in_reverse_with_nothing_left_over()
    {
        await Post("opened", ("about", "case"));
        for (var step = 1; step <= Steps; step++)
            await TakeOff($"thing {step}", $"tray {step % 4}", step == 7 ? "boss cracked" : "", (byte)step);
        var page = await Get();
        Assert.True(page.Length <= 100_000, $"{page.Length} characters");
        Assert.Contains("boss cracked", page);
        Assert.Equal(Enumerable.Range(1, Steps).Select(n => $"Photo: thing {n}"), Photo().Matches(page).Select(m => m.Groups[1].Value));
        Assert.Equal(Enumerable.Range(1, Steps).Reverse().Select(n => $"thing {n}"), GoingBack(page));
        Assert.DoesNotContain("Left over", page);
        var photo = await browser.GetByteArrayAsync(Source().Match(page).Groups[1].Value, TestContext.Current.CancellationToken);
        Assert.Equal(Png(1), photo);

        for (var step = Steps; step > 1; step--)
            await PutBack(await Get());
        await Post("opened", ("about", "case"), ("shut", "yes"));
        page = await Get();
        Assert.Contains("Left over: 1.", page);
        Assert.Equal(["thing 1"], GoingBack(page));
        Assert.Contains("Left over: 1.", await browser.GetStringAsync($"/jobs/{job}/close", TestContext.Current.CancellationToken));

        await PutBack(page);
        page = await Get();
        Assert.DoesNotContain("Left over", page);
        Assert.Contains("Everything that came off is back on.", page);
    }

    [Fact]
    public async Task A_photo_alone_is_a_step()
    {
        await TakeOff("", "", "", 1);
        Assert.Equal(["what photo 1 shows"], GoingBack(await Get()));
    }

    [Fact]
    public async Task Neither_words_nor_a_photo_are_refused()
    {
        var response = await Send("taken-off", ("what", ""), ("where", "tray 9"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, response.StatusCode);
        Assert.Contains("value=\"tray 9\"", await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public void Of_things_called_alike_the_tray_says_which_one_is_back_on()
    {
        var things = LooseThing.Of([Off("2 screws", "tray 1"), Off("2 screws", "tray 2"), new TakenOff(default, "2 screws", "tray 1", BackOn: true)]);
        Assert.Equal([true, false], things.Select(t => t.BackOn));
    }

    [Fact]
    public void What_came_off_after_the_last_cover_was_shut_is_not_left_over()
    {
        Opened shut = new(default, "case", Shut: true), open = new(default, "case", Shut: false);
        Assert.Equal([true, false], LooseThing.Of([open, Off("shield", null), shut, Off("knob", null)]).Select(t => t.LeftOver));
        Assert.Equal([false], LooseThing.Of([open, Off("shield", null), shut, open]).Select(t => t.LeftOver));
    }

    /// <summary>The screws of the cover may lie in the tray while the board behind it goes back in.</summary>
    [Fact]
    public void A_board_put_back_asks_for_what_came_off_it_and_not_for_the_cover_s_screws() => Assert.Equal(
        [false, true],
        LooseThing.Of([new Opened(default, "case", false), Off("14 screws", "tray 1"), new Opened(default, "main-board", false), Off("ribbon", null), new Opened(default, "main-board", true)]).Select(t => t.LeftOver));

    private static TakenOff Off(string what, string? where) => new(default, what, where, BackOn: false);

    private async Task<string> Get() => WebUtility.HtmlDecode(await browser.GetStringAsync($"/jobs/{job}/strip-down", TestContext.Current.CancellationToken));

    /// <summary>The first thing that the page says goes back.</summary>
    private async Task PutBack(string page)
    {
        var what = GoingBack(page)[0];
        var where = Regex.Match(page, $"name=\"what\" value=\"{what}\">\\s*<input type=\"hidden\" name=\"where\" value=\"([^\"]*)\"").Groups[1].Value;
        await Post("taken-off", ("what", what), ("where", where), ("back-on", "yes"));
    }

    private async Task TakeOff(string what, string where, string odd, byte picture)
    {
        using var body = new MultipartFormDataContent
        {
            { new StringContent(await Token()), "__RequestVerificationToken" },
            { new StringContent(what), "what" },
            { new StringContent(where), "where" },
            { new StringContent(odd), "note" },
            { new ByteArrayContent(Png(picture)), "photo", "step.png" },
        };
        Assert.Equal(HttpStatusCode.SeeOther, (await browser.PostAsync($"/jobs/{job}/taken-off", body, TestContext.Current.CancellationToken)).StatusCode);
    }

    private async Task Post(string step, params (string Name, string Value)[] fields) =>
        Assert.Equal(HttpStatusCode.SeeOther, (await Send(step, fields)).StatusCode);

    private async Task<HttpResponseMessage> Send(string step, params (string Name, string Value)[] fields) => await browser.PostAsync(
        $"/jobs/{job}/{step}",
        new FormUrlEncodedContent([new("__RequestVerificationToken", await Token()), new("page", "strip-down"), .. fields.Any(f => f.Name == "about") ? [] : new[] { KeyValuePair.Create("about", "") }, .. fields.Select(f => KeyValuePair.Create(f.Name, f.Value))]),
        TestContext.Current.CancellationToken);

    private async Task<string> Token() => TokenField().Match(await browser.GetStringAsync("/settings", TestContext.Current.CancellationToken)).Groups[1].Value;

    private static List<string> GoingBack(string page) => [.. BackOn().Matches(page).Select(m => m.Groups[1].Value)];

    /// <summary>Begins as every PNG does (ISO/IEC 15948, 5.2): content decides, not the name.</summary>
    private static byte[] Png(byte picture) => [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, picture, .. new byte[24]];

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex TokenField();

    [GeneratedRegex("alt=\"(Photo: [^\"]+)\"")]
    private static partial Regex Photo();

    [GeneratedRegex("<img src=\"([^\"]+)\"")]
    private static partial Regex Source();

    [GeneratedRegex("aria-label=\"Back on: ([^\"]+)\"")]
    private static partial Regex BackOn();
}
