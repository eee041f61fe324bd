using Microsoft.Playwright;
using Xunit;

namespace Triage.Browser.Tests.Stories;

/// <summary>Nothing listed explains what is seen: the page says so, and what is found becomes listed. On a phone, without JavaScript.</summary>
public class NoneOfTheseTests
{
    private const string Complaint = "hisses and hums, a note hangs, smells burnt", Found = "Spider nest across the sound board";

    [Fact]
    public async Task A_new_fault_in_free_words_is_listed_from_then_on()
    {
        await using var phone = await Phone.Open();
        var page = phone.Page;
        await phone.TakeIn("Pellwick S-40", Complaint);
        Assert.Equal("unlisted", await page.Locator("#causes > ol > li").First.GetAttributeAsync("data-fault"));
        var remarks = await page.Locator(".remark").AllInnerTextsAsync();
        Assert.Contains(remarks, r => r.StartsWith("No listed cause explains this well", StringComparison.Ordinal));
        Assert.Contains(remarks, r => r.StartsWith("To learn more: ", StringComparison.Ordinal));

        await phone.Go($"{phone.JobPath}/close");
        var close = page.Locator("#close");
        await close.Locator("input[name=outcome][value=mended]").CheckAsync();
        await page.GetByLabel("None of these: in your words").FillAsync(Found);
        await close.Locator("#new-cause-grade").SelectOptionAsync("measured");
        await close.GetByRole(AriaRole.Button, new() { Name = "Close the job" }).ClickAsync();
        Assert.Contains(Found, await phone.Text("#ended"));
        Assert.Contains("first met here", await phone.Text("#ended"));
        Assert.Contains("Corvane K-49", await phone.Text("#taught"));

        await phone.Go($"/ask?machine=Corvane+K-49&complaint={Uri.EscapeDataString(Complaint)}");
        Assert.Contains(Found, await page.Locator("#causes").TextContentAsync());
    }
}
