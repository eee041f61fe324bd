using Microsoft.Playwright;

namespace Triage.Browser.Tests;

/// <summary>One Chromium for a run of tests; each opens windows of its own, which share nothing.</summary>
internal static class Chromium
{
    private static readonly Lazy<Task<IBrowser>> started = new(Start);

    public static Task<IBrowser> Shared => started.Value;

    private static async Task<IBrowser> Start()
    {
        var playwright = await Playwright.CreateAsync();
        return await playwright.Chromium.LaunchAsync(new() { ExecutablePath = "/usr/bin/chromium", Args = ["--no-sandbox"] });
    }
}
