using Triage.Workshop.Model;

namespace Triage.Workshop.Tests;

/// <summary>What learning was fitted to, shared by all benches of all test runs: the books are nearly always the same.</summary>
internal static class SharedFits
{
    public static RememberedFits OfAll { get; } = new(Path.Combine(Path.GetTempPath(), "triage-fits-of-tests"));
}
