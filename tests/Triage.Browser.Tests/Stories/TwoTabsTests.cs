using Microsoft.Playwright;
using Triage.Service.Tests;
using Xunit;

namespace Triage.Browser.Tests.Stories;

/// <summary>What happens when the bench is not a quiet place: two tabs, a server that went away, a thing taken back.</summary>
public class TwoTabsTests(SharedBench shared) : IClassFixture<SharedBench>
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task The_second_tab_is_told_and_loses_nothing(bool script)
    {
        await using var phone = await Phone.Open(script, at: shared.Bench);
        var job = $"/jobs/{phone.OneOfItsOwn()}";
        await phone.Go(job);
        var second = await phone.Page.Context.NewPageAsync();
        await second.GotoAsync(job);
        await phone.Page.GetByLabel("One line, as it comes").FillAsync("lid off, dust");
        await phone.Click(phone.Page.GetByRole(AriaRole.Button, new() { Name = "Keep the line" }));

        await second.GetByLabel("One line, as it comes").FillAsync("rail 4.9 V");
        await second.GetByRole(AriaRole.Button, new() { Name = "Keep the line" }).ClickAsync();
        var told = second.GetByRole(AriaRole.Alert).First;
        await told.WaitForAsync();
        Assert.Contains("lid off, dust", await told.InnerTextAsync());
        Assert.Equal("rail 4.9 V", await second.GetByLabel("One line, as it comes").InputValueAsync());
        await second.GetByRole(AriaRole.Button, new() { Name = "Keep the line" }).ClickAsync();
        await second.Locator("#time-line").GetByText("rail 4.9 V").First.WaitForAsync();
        Assert.Contains("lid off, dust", await second.Locator("#time-line").InnerTextAsync());
    }

    [Fact]
    public async Task A_form_begun_before_the_server_was_stopped_goes_through_after_it_is_back()
    {
        await using var phone = await Phone.Open(at: shared.Bench);
        var job = $"/jobs/{phone.OneOfItsOwn()}";
        await phone.Go(job);
        await phone.Page.GetByLabel("One line, as it comes").FillAsync("typed while it went away");
        await phone.Bench.Restart();
        await phone.Click(phone.Page.GetByRole(AriaRole.Button, new() { Name = "Keep the line" }));
        Assert.Equal(0, await phone.Page.GetByRole(AriaRole.Alert).CountAsync());
        Assert.Contains("typed while it went away", await phone.Text("#time-line"));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Any_entry_can_be_taken_back_not_only_the_last(bool script)
    {
        await using var phone = await Phone.Open(script, at: shared.Bench);
        var job = $"/jobs/{phone.OneOfItsOwn()}";
        await phone.Go(job);
        foreach (var line in new[] { "first of two", "second of two" })
        {
            await phone.Page.GetByLabel("One line, as it comes").FillAsync(line);
            await phone.Click(phone.Page.GetByRole(AriaRole.Button, new() { Name = "Keep the line" }));
        }

        await phone.Click(phone.Page.Locator("#time-line li", new() { HasText = "first of two" }).GetByRole(AriaRole.Button));
        var log = await phone.Text("#time-line");
        Assert.DoesNotContain("first of two", log);
        Assert.Contains("second of two", log);
    }

    /// <summary>The smallest PNG with a pixel (ISO/IEC 15948: signature, IHDR, IDAT, IEND).</summary>
    internal static byte[] OnePixel { get; } = Convert.FromBase64String("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==");
}
