using Xunit;

namespace Triage.Workshop.Tests.Store;

/// <summary>Waits for what a watched folder brings; how long it takes is not what is tested.</summary>
internal static class Eventually
{
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(60);

    public static async Task Is(LiveBench live, Func<Bench, bool> holds)
    {
        var limit = Task.Delay(Longest, TestContext.Current.CancellationToken);
        while (!holds(live.Current) && !limit.IsCompleted)
            await Task.Delay(20, TestContext.Current.CancellationToken);
        Assert.True(holds(live.Current), $"Not within {Longest}.");
    }
}
