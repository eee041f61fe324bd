using Microsoft.Playwright;
using Triage.Service.Tests;
using Xunit;

namespace Triage.Browser.Tests.Stories;

/// <summary>A machine apart in up to 25 steps, a photo each, and back together in reverse, on a phone.</summary>
public class StripDownStoryTests(SharedBench shared) : IClassFixture<SharedBench>
{
    [Theory]
    [InlineData(25, false)]
    [InlineData(10, true)]
    public async Task Steps_with_photos_go_back_on_from_the_last_to_the_first(int steps, bool script)
    {
        await using var phone = await Phone.Open(script, at: shared.Bench);
        var (page, job) = (phone.Page, phone.OneOfItsOwn());
        await phone.Go($"/jobs/{job}/strip-down");
        for (var step = 1; step <= steps; step++)
        {
            var form = page.Locator("form[action*='/taken-off']", new() { Has = page.Locator("input[type=file]") });
            if (step % 5 != 0)
                await form.Locator("input[name=what]").FillAsync($"thing {step}");
            await form.Locator("input[name=where]").FillAsync($"tray {step % 4}");
            await form.Locator("input[type=file]").SetInputFilesAsync(new FilePayload { Name = "step.png", MimeType = "image/png", Buffer = TwoTabsTests.OnePixel });
            await phone.Click(form.Locator("button"));
        }

        var back = await page.Locator("button[aria-label^='Back on: ']").EvaluateAllAsync<string[]>("all => all.map(b => b.getAttribute('aria-label').slice(9))");
        Assert.Equal(Enumerable.Range(1, steps).Reverse().Select(s => s % 5 == 0 ? $"what photo {s} shows" : $"thing {s}"), back);
        Assert.Equal(steps, await page.Locator("img[alt^='Photo: ']").EvaluateAllAsync<int>("all => new Set(all.map(i => i.alt)).size"));
        foreach (var address in await page.Locator("img[alt^='Photo: ']").EvaluateAllAsync<string[]>("all => all.map(i => i.src)"))
            Assert.Equal(TwoTabsTests.OnePixel, await (await page.APIRequest.GetAsync(address)).BodyAsync());
        Assert.Equal(390, await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth"));
        await Pictures.Keep(page, $"strip-down-{(script ? "script" : "plain")}");
        await phone.Go($"/jobs/{job}/print/reassembly");
        var sheet = await page.Locator("#reassembly .boxes li").AllInnerTextsAsync();
        Assert.Equal(back, sheet.Select(line => line.Split(", lies in ")[0]));
        Assert.All(sheet.Zip(back), line => Assert.Contains(", lies in tray ", line.First));
        await phone.Go($"/jobs/{job}/close");
        Assert.Contains($"Left over: {steps}", await phone.Text("main"));
        await phone.Go($"/jobs/{job}/strip-down");
        for (var left = steps; left > 0; left--)
            await phone.Click(page.Locator("button[aria-label^='Back on: ']").First);
        Assert.Contains("Everything that came off is back on.", await phone.Text("main"));
    }
}
