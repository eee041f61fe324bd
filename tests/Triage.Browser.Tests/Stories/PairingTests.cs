using Microsoft.Playwright;
using Triage.Service.Tests;
using Xunit;

namespace Triage.Browser.Tests.Stories;

/// <summary>A phone comes in over HTTPS with the code that the bench shows, and is shut out again.</summary>
public class PairingTests
{
    [Fact]
    public async Task A_phone_comes_in_with_the_right_code_only_and_stays_out_once_shut_out()
    {
        await using var bench = await ServedBench.Start(phone: new() { Port = 0 });
        var browser = await Chromium.Shared;
        var invitation = bench.Invite();
        var phone = await Page(browser, invitation.Address);
        await phone.GotoAsync("/");
        Assert.EndsWith("/pair", phone.Url);
        await phone.GetByLabel("Code").FillAsync("AAAA-AAAA");
        await phone.GetByRole(AriaRole.Button, new() { Name = "Pair it" }).ClickAsync();
        Assert.Contains("code", await phone.GetByRole(AriaRole.Alert).InnerTextAsync(), StringComparison.OrdinalIgnoreCase);
        await phone.GotoAsync("/");
        Assert.EndsWith("/pair", phone.Url);

        await phone.GotoAsync(invitation.Link.PathAndQuery);
        await phone.GetByLabel("What to call this phone").FillAsync("bench phone");
        await phone.GetByRole(AriaRole.Button, new() { Name = "Pair it" }).ClickAsync();
        await phone.GotoAsync("/jobs/2026-022");
        Assert.NotEmpty(await phone.Locator("#next-name").InnerTextAsync());

        await phone.GetByLabel("One line, as it comes").FillAsync("typed before it was shut out");
        var desk = await Page(browser, bench.Address);
        await desk.GotoAsync("/phones");
        await desk.GetByRole(AriaRole.Button, new() { Name = "Shut out bench phone" }).ClickAsync();
        await phone.GetByRole(AriaRole.Button, new() { Name = "Keep the line" }).ClickAsync();
        Assert.Equal(0, await phone.Locator("#time-line").CountAsync());
        Assert.DoesNotContain(bench.Live.Current.Notes.Find<Notes.Kinds.Job>("2026-022")!.Log, e => e is Notes.Kinds.QuickLine { Text: "typed before it was shut out" });
        await phone.GotoAsync("/jobs/2026-022");
        Assert.EndsWith("/pair", phone.Url);
    }

    [Theory]
    [InlineData(ColorScheme.Light)]
    [InlineData(ColorScheme.Dark)]
    public async Task The_door_keeps_nobody_out_who_has_the_code(ColorScheme colours)
    {
        await using var bench = await ServedBench.Start(phone: new() { Port = 0 });
        var browser = await Chromium.Shared;
        var context = await browser.NewContextAsync(new() { ViewportSize = new() { Width = 390, Height = 844 }, ColorScheme = colours, BypassCSP = true, IgnoreHTTPSErrors = true });
        var page = await context.NewPageAsync();
        await page.GotoAsync(bench.Invite().Link.AbsoluteUri);
        await Pictures.Keep(page, $"pair-390-{colours}");
        Assert.Empty(await Axe.Violations(page));
    }

    /// <summary>The bench's certificate is its own: a person compares the fingerprint, here it is taken as compared.</summary>
    private static async Task<IPage> Page(IBrowser browser, Uri address)
    {
        var context = await browser.NewContextAsync(new() { JavaScriptEnabled = false, ViewportSize = new() { Width = 390, Height = 844 }, BaseURL = address.ToString(), IgnoreHTTPSErrors = true });
        context.SetDefaultTimeout(60_000);
        return await context.NewPageAsync();
    }
}
