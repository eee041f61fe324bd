using Xunit;

namespace Triage.Service.Tests;

/// <summary>One bench for all tests of a class: they read, or write only what no other test of the class looks at.</summary>
public class SharedBench : IAsyncLifetime
{
    public ServedBench Bench { get; private set; } = null!;

    public virtual async ValueTask InitializeAsync() => Bench = await Start();

    public virtual ValueTask DisposeAsync()
    {
        GC.SuppressFinalize(this);
        return Bench.DisposeAsync();
    }

    protected virtual Task<ServedBench> Start() => ServedBench.Start();
}
