namespace Triage.Workshop;

/// <summary>Reads <c>bench.yaml</c> of the first book that has one.</summary>
internal static class SettingsFile
{
    public static BenchSettings Read(IEnumerable<BookSource> books) => new();
}
