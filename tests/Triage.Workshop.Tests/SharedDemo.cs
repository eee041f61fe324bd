using Triage.Workshop.Tests;
using Xunit;

[assembly: AssemblyFixture(typeof(SharedDemo))]

namespace Triage.Workshop.Tests;

/// <summary>One bench for all tests that only read, or that take in jobs of their own and close none.</summary>
public sealed class SharedDemo : IAsyncDisposable
{
    private readonly Lazy<DemoBench> bench = new(() => DemoBench.Open());

    public DemoBench Bench => bench.Value;

    public ValueTask DisposeAsync() => bench.IsValueCreated ? bench.Value.DisposeAsync() : ValueTask.CompletedTask;
}
