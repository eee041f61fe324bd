using Microsoft.Playwright;

namespace Triage.Browser.Tests;

/// <summary>Pictures of whole pages, to be looked at by people: kept in the folder that TRIAGE_PICTURES names, else not taken.</summary>
internal static class Pictures
{
    private static readonly string? folder = Environment.GetEnvironmentVariable("TRIAGE_PICTURES");

    public static async Task Keep(IPage page, string name)
    {
        if (!string.IsNullOrEmpty(folder))
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"{name}.png".ToLowerInvariant()), FullPage = true });
    }
}
