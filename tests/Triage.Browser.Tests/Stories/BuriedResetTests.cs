using Microsoft.Playwright;
using Xunit;

namespace Triage.Browser.Tests.Stories;

/// <summary>
/// A keyboard that only wakes by a reset nobody remembers, until power is lost again: from the complaint to a closed job
/// that helps with another model. On a phone, without JavaScript.
/// </summary>
public class BuriedResetTests
{
    private const string Complaint = "power lamp lit, nothing on the display, no sound";

    private const string Look = "Look for leakage round the back-up capacitor or cell", InPlace = "Ohms across the back-up capacitor, in place";

    [Fact]
    public async Task From_a_dead_keyboard_to_a_lesson_for_another_model()
    {
        await using var phone = await Phone.Open();
        var page = phone.Page;
        await phone.Go($"/ask?machine=Pellwick+S-40&complaint={Uri.EscapeDataString(Complaint)}");
        var before = await phone.Percent("backup-capacitor-shorted");

        await phone.TakeIn("Corvane K-61", Complaint);
        await Heard(page, "display", "blank");
        await Heard(page, "sound", "none");
        await Heard(page, "power-lamp", "lit");

        var reset = page.Locator("#resets article").First;
        var card = await reset.InnerTextAsync();
        Assert.Contains("K-61 controller reset", card);
        Assert.Contains("Hold the lowest C and the C sharp beside it.", card);
        Assert.Contains("It erases registrations 1 to 8", card);
        Assert.Contains("Not yet:", card);
        Assert.Equal(0, await reset.Locator("button[value=works]").CountAsync());
        await reset.GetByRole(AriaRole.Button, new() { Name = "The owner agrees" }).ClickAsync();
        await page.Locator("#resets article").First.Locator("button[value=works]").ClickAsync();
        Assert.Contains("still work", await phone.NextStep());
        await phone.Press("no");

        var leading = page.Locator("#causes > ol > li").First;
        Assert.StartsWith("backup-capacitor", await leading.GetAttributeAsync("data-fault"));
        Assert.Contains("until power was lost", await leading.InnerTextAsync());

        Assert.Contains(await phone.NextStep(), new[] { Look, InPlace });
        var job = phone.JobPath;
        await phone.Go($"{job}/findings");
        await page.Locator("fieldset[data-finding=leakage-at-backup] button[value=no]").ClickAsync();
        await phone.Go(job);
        Assert.Equal(InPlace, await phone.NextStep());
        await phone.Press("flat-low");
        Assert.Contains("one leg lifted", await phone.NextStep());
        await phone.Press("flat-low");
        Assert.Equal("Replace the back-up capacitor", await phone.NextStep());
        var mend = await phone.Text("#next");
        Assert.Contains("Must match", mend);
        Assert.Contains("C14", mend);
        Assert.Matches(@"about \d+(\.\d)? \S+, \d+(\.\d)? days of waiting", mend);

        await phone.Go($"{job}/parts");
        await Part(page, "ordered");
        await page.Locator("#parts button[value=arrived]").ClickAsync();
        await page.Locator("#parts button[value=tested-good]").ClickAsync();
        await phone.Go(job);
        await page.GetByLabel("the new part was tested before it went in").First.CheckAsync();
        await phone.Press("works");
        await page.GetByLabel("Looked again after").SelectOptionAsync("soak");
        await phone.Press("yes");
        Assert.Contains("Close", await phone.NextStep());

        await phone.Go($"{job}/close");
        await Close(page, "backup-capacitor-shorted", "measured");
        var taught = page.Locator("#taught li[data-device=pellwick-s40][data-fault=backup-capacitor-shorted]");
        Assert.Contains("Because of this job", await phone.Text("#taught"));
        Assert.Matches(@"\d+ % → \d+ %", await taught.InnerTextAsync());
        await phone.Go($"/ask?machine=Pellwick+S-40&complaint={Uri.EscapeDataString(Complaint)}");
        Assert.True(await phone.Percent("backup-capacitor-shorted") > before, $"{before} before, {await phone.Percent("backup-capacitor-shorted")} after");
        await page.Locator("#causes li[data-fault=backup-capacitor-shorted]").GetByRole(AriaRole.Link).ClickAsync();
        var why = page.Locator("#causes li[data-fault=backup-capacitor-shorted]");
        await why.Locator("summary").ClickAsync();
        var behind = why.Locator("li", new() { Has = page.Locator($"a[href='{job}']") });
        Assert.Contains("% without this job", await behind.InnerTextAsync());
    }

    private static async Task Heard(IPage page, string finding, string value)
    {
        var pressed = page.Locator($"fieldset[data-finding={finding}] button[aria-pressed=true]");
        Assert.Equal(value, await pressed.GetAttributeAsync("value"));
    }

    private static async Task Part(IPage page, string state)
    {
        await page.Locator("#parts summary").ClickAsync();
        await page.GetByLabel("Part", new() { Exact = true }).FillAsync("backup-capacitor");
        await page.Locator("#state").SelectOptionAsync(state);
        await page.GetByLabel("Price", new() { Exact = true }).FillAsync("2,40");
        await page.GetByLabel("Shipping").FillAsync("3.5");
        await page.Locator("#parts").GetByRole(AriaRole.Button, new() { Name = "Keep it" }).ClickAsync();
    }

    private static async Task Close(IPage page, string cause, string grade)
    {
        var close = page.Locator("#close");
        await close.Locator("input[name=outcome][value=mended]").CheckAsync();
        await close.Locator($"input[name=cause][value={cause}]").CheckAsync();
        await close.Locator($"select[name=grade-{cause}]").SelectOptionAsync(grade);
        await page.GetByLabel("Minutes at the bench").FillAsync("70");
        await close.GetByRole(AriaRole.Button, new() { Name = "Close the job" }).ClickAsync();
        Assert.Contains("Mended", await page.Locator("#ended h2").InnerTextAsync());
    }
}
