using Microsoft.Playwright;
using Triage.Service.Tests;
using Triage.Notes.Kinds;
using Xunit;

namespace Triage.Browser.Tests.Stories;

/// <summary>Lines as they are written at night, with a photo: each is kept as it is, and the page says what was read in it. Without JavaScript.</summary>
public class QuickLineTests(SharedBench shared) : IClassFixture<SharedBench>
{
    private const string Job = "2026-023";

    /// <summary>"47/16" is microfarads and volts, "4k7" is IEC 60062, T a fuse with time-lag (IEC 60127, from memory); the words are common practice, no source.</summary>
    /// <param name="also">What else the time line then has, one entry or none.</param>
    [Theory]
    [InlineData("C14 short, 47/16, plays", "Read as: C14, shorted, 47 µF 16 V, works.")]
    [InlineData("R12 open, 4k7, works", "Read as: R12, open, 4.7 kΩ, works.")]
    [InlineData("5V rail 3.1 V", "Read as: 5 V rail, 3.1 V.", "5 V rail: 3.1 V")]
    [InlineData("fuse blown 1A slow, new one holds", "Read as: fuse, blown, T 1 A, fitted new, works.")]
    [InlineData("no sound, headphones ok", "Kept as written; no part, reading, fix or outcome was read from it.")]
    [InlineData("cleaned switch, plays", "Read as: cleaned, switch, works.")]
    [InlineData("C3 0.1u leaky, replaced, plays", "Read as: C3, 100 nF, leaky, swapped, works.")]
    public async Task A_line_is_kept_as_written_with_its_photo_and_read_where_it_can_be(string line, string read, string? also = null)
    {
        await using var phone = await Phone.Open(at: shared.Bench);
        var before = Log(phone).Count();
        await phone.Go("/");
        await phone.Page.GetByText("A line and a photo for a job").ClickAsync();
        await phone.Page.Locator("#job").SelectOptionAsync(Job);
        await phone.Page.GetByLabel("One line, as it comes").FillAsync(line);
        await phone.Page.GetByLabel("Photo beside it").SetInputFilesAsync(new FilePayload { Name = "../IMG 1.png", MimeType = "image/png", Buffer = TwoTabsTests.OnePixel });
        await phone.Click(phone.Page.GetByRole(AriaRole.Button, new() { Name = "Keep the line" }));

        string[] added = [.. (await phone.Page.Locator("#time-line li").AllInnerTextsAsync()).TakeLast(also is null ? 1 : 2)];
        Assert.Contains(line, added[0]);
        Assert.Contains(read, added[0]);
        Assert.Contains("photo", added[0]);
        Assert.Contains(also ?? line, added[^1]);
        Assert.Equal(before + added.Length, Log(phone).Count());
        var kept = Log(phone).OfType<QuickLine>().Last();
        Assert.Equal(line, kept.Text);
        Assert.Equal(TwoTabsTests.OnePixel, await File.ReadAllBytesAsync(Path.Combine(phone.Bench.DemoFolder, Assert.Single(kept.Photos)), TestContext.Current.CancellationToken));
    }

    /// <summary>A reading in a line is one among the readings, judged like any other.</summary>
    [Fact]
    public async Task A_reading_in_a_line_stands_among_the_readings()
    {
        await using var phone = await Phone.Open(at: shared.Bench);
        var job = phone.OneOfItsOwn();
        await phone.Go($"/jobs/{job}");
        await phone.Page.GetByLabel("One line, as it comes").FillAsync("5V rail 3.1 V");
        await phone.Click(phone.Page.GetByRole(AriaRole.Button, new() { Name = "Keep the line" }));
        await phone.Go($"/jobs/{job}/readings");
        Assert.Contains("5 V rail: 3.1 V", await phone.Text("main"));
    }

    private static IEnumerable<LogEntry> Log(Phone phone) => phone.Bench.Live.Current.Notes.Find<Job>(Job)!.Log;
}
