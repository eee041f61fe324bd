namespace Triage.Notes.Tests;

/// <summary>Files of the repository that tests read.</summary>
internal static class Repository
{
    public static string Root { get; } = FindRoot(AppContext.BaseDirectory);

    public static string PathOf(params string[] parts) => Path.Combine([Root, .. parts]);

    private static string FindRoot(string folder) =>
        File.Exists(Path.Combine(folder, "Triage.sln")) ? folder : FindRoot(Path.GetDirectoryName(folder)!);
}
