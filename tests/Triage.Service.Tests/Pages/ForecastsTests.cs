using Xunit;

namespace Triage.Service.Tests.Pages;

/// <summary>The page says that it is being worked out, and then what came of it, without any script.</summary>
public sealed class ForecastsTests : IAsyncLifetime
{
    private ServedBench bench = null!;
    private HttpClient browser = null!;

    public async ValueTask InitializeAsync()
    {
        // what is forecast is each closed job of the last two years
        bench = await ServedBench.Start(book =>
        {
            foreach (var year in Directory.GetDirectories(Path.Combine(book, "jobs")).Where(y => string.CompareOrdinal(Path.GetFileName(y), "2024") < 0))
                Directory.Delete(year, recursive: true);
        });
        browser = new() { BaseAddress = bench.Address };
    }

    public async ValueTask DisposeAsync()
    {
        browser.Dispose();
        await bench.DisposeAsync();
    }

    [Fact]
    public async Task Scores_stand_beside_base_rates_and_the_diagram_says_in_words_what_it_draws()
    {
        var stop = TestContext.Current.CancellationToken;
        Assert.Contains("href=\"/review/forecasts\"", await browser.GetStringAsync("/review", stop));
        var page = await browser.GetStringAsync("/review/forecasts", stop);
        // worked out once, beside whatever else the machine does
        while (page.Contains("Look again", StringComparison.Ordinal))
        {
            await Task.Delay(TimeSpan.FromSeconds(0.5), stop);
            page = await browser.GetStringAsync("/review/forecasts", stop);
        }

        Assert.Matches("(?s)the bench.*base rates.*maximum entropy", page);
        Assert.Matches("aria-label=\"[0-9]+ % sure, ", page);
    }
}
