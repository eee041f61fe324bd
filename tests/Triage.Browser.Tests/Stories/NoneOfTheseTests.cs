using Microsoft.Playwright;
using Xunit;

namespace Triage.Browser.Tests.Stories;

/// <summary>Nothing listed explains what is seen: the page says so, and what is found becomes listed.</summary>
public class NoneOfTheseTests
{
    private static readonly (string Finding, string Value)[] Odd = [("tuning-drifts", "yes"), ("burnt-smell", "yes"), ("changes-when-tapped", "yes"), ("stuck-note", "yes"), ("hum", "yes")];

    [Fact]
    public async Task A_new_fault_in_free_words_is_listed_from_then_on()
    {
        await using var phone = await Phone.Open();
        var page = phone.Page;
        await phone.TakeIn("Corvane K-61", "it does something odd");
        foreach (var (finding, value) in Odd)
            await Tap(page, finding, value);

        Assert.Equal("unlisted", await page.Locator("#causes > ol > li").First.GetAttributeAsync("data-fault"));
        Assert.Contains("No listed cause explains this well", await page.Locator(".remark").First.InnerTextAsync());
        Assert.NotEmpty(await phone.NextStep());

        var close = page.Locator("#close");
        await close.Locator("input[name=outcome][value=mended]").CheckAsync();
        await page.GetByLabel("None of these: in your words").FillAsync("Spider nest across the key bed");
        await close.GetByRole(AriaRole.Button, new() { Name = "Close the job" }).ClickAsync();
        Assert.Contains("Spider nest across the key bed", await page.Locator("#ended").InnerTextAsync());
        Assert.Contains("first met here", await page.Locator("#ended").InnerTextAsync());

        await phone.TakeIn("Corvane K-61", "it does something odd");
        foreach (var (finding, value) in Odd)
            await Tap(page, finding, value);
        Assert.Contains("Spider nest across the key bed", await page.Locator("#causes").TextContentAsync());
    }

    private static async Task Tap(IPage page, string finding, string value)
    {
        if (await page.Locator("#findings > details[open]").CountAsync() == 0)
            await page.Locator("#findings > details > summary").ClickAsync();
        await page.Locator($"fieldset[data-finding={finding}] button[value={value}]").ClickAsync();
    }
}
