using Triage.Workshop;

namespace Torture;

/// <summary>An open bench for as long as it is used.</summary>
internal sealed class Opened(LiveBench live) : IDisposable
{
    public LiveBench Live => live;

    public void Dispose() => live.DisposeAsync().AsTask().GetAwaiter().GetResult();
}
