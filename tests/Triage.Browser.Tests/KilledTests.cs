using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using Microsoft.Playwright;
using Triage.Workshop.Tests;
using Xunit;

namespace Triage.Browser.Tests;

/// <summary>The real program killed (SIGKILL) in the middle of a form, and started again.</summary>
public sealed class KilledTests : IDisposable
{
    private const string Line = "typed while it was killed", Kept = "kept before it was killed";

    private string wayIn = "";

    private readonly string folder = Directory.CreateTempSubdirectory("killed-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public async Task What_was_kept_is_there_and_what_was_typed_goes_through_when_it_is_back()
    {
        var port = FreePort();
        Fill();
        await using var context = await (await Chromium.Shared).NewContextAsync();
        var page = await context.NewPageAsync();
        page.SetDefaultTimeout(60_000);
        using (var first = await Started(port))
        {
            await page.GotoAsync(wayIn);
            await page.GotoAsync($"http://127.0.0.1:{port}/jobs/2026-023");
            await Keep(page, Kept);
            await page.Locator("#time-line").GetByText(Kept).First.WaitForAsync();
            await page.GetByLabel("One line, as it comes").FillAsync(Line);
            first.Kill();
            await first.WaitForExitAsync(TestContext.Current.CancellationToken);
        }

        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the line" }).ClickAsync();
        await page.GetByRole(AriaRole.Alert).WaitForAsync();
        Assert.Equal(Line, await page.GetByLabel("One line, as it comes").InputValueAsync());

        using var second = await Started(port);
        try
        {
            await Keep(page, Line);
            await page.Locator("#time-line").GetByText(Line).First.WaitForAsync();
            Assert.Contains(Kept, await page.Locator("#time-line").InnerTextAsync());
        }
        finally
        {
            second.Kill();
            await second.WaitForExitAsync(TestContext.Current.CancellationToken);
        }
    }

    private static async Task Keep(IPage page, string line)
    {
        await page.GetByLabel("One line, as it comes").FillAsync(line);
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the line" }).ClickAsync();
    }

    private async Task<Process> Started(int port)
    {
        var program = Path.Combine(AppContext.BaseDirectory, "triage.dll");
        var process = Process.Start(new ProcessStartInfo("dotnet", [program, "serve", "--port", port.ToString(System.Globalization.CultureInfo.InvariantCulture), "--book", Path.Combine(folder, "demo"), "--book", Path.Combine(folder, "common")]) { RedirectStandardOutput = true, RedirectStandardError = true, Environment = { ["XDG_RUNTIME_DIR"] = folder } })!;
        wayIn = (await process.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken))!.Split(' ').Single(w => w.StartsWith("http://", StringComparison.Ordinal));
        return process;
    }

    private void Fill()
    {
        foreach (var book in new[] { "demo", "common" })
            BookCopy.All(Path.Combine(Service.Tests.ServedBench.Knowledge, book), Path.Combine(folder, book));
    }

    private static int FreePort()
    {
        using var socket = new TcpListener(IPAddress.Loopback, 0);
        socket.Start();
        return ((IPEndPoint)socket.LocalEndpoint).Port;
    }
}
