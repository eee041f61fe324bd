using Triage.Tools.Soybean;
using Triage.Workshop.Tests.Importing;
using Xunit;

[assembly: AssemblyFixture(typeof(SharedSoybeans))]

namespace Triage.Workshop.Tests.Importing;

/// <summary>The soybean cases, brought in once for all tests that read them.</summary>
public sealed class SharedSoybeans : IAsyncDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("triage-soybean-");
    private readonly Lazy<SoybeanCases> cases;

    public SharedSoybeans() => cases = new(() => SoybeanCases.BringIn(Data, folder.CreateSubdirectory("all").FullName));

    internal static string Data { get; } = Path.Combine(AppContext.BaseDirectory, "data");

    internal SoybeanCases Cases => cases.Value;

    /// <summary>For what a test makes of them.</summary>
    internal string Beside(string name) => Path.Combine(folder.FullName, name);

    public async ValueTask DisposeAsync()
    {
        if (cases.IsValueCreated)
            await cases.Value.DisposeAsync();
        folder.Delete(recursive: true);
    }
}
