namespace Triage.House.Tests;

/// <summary>The checkout that the tests run in.</summary>
internal static class Checkout
{
    private static readonly string[] NotOurs = ["bin", "obj", ".git", "artifacts"];

    public static string Root { get; } = Find(AppContext.BaseDirectory);

    /// <summary>Files that people wrote, relative to the root.</summary>
    public static IEnumerable<string> Files(string pattern) =>
        Directory.EnumerateFiles(Root, pattern, SearchOption.AllDirectories)
            .Select(f => Path.GetRelativePath(Root, f))
            .Where(f => !f.Split(Path.DirectorySeparatorChar).Any(NotOurs.Contains));

    public static string Read(string path) => File.ReadAllText(Path.Combine(Root, path));

    private static string Find(string folder) =>
        File.Exists(Path.Combine(folder, "Triage.sln")) ? folder : Find(Path.GetDirectoryName(folder) ?? throw new DirectoryNotFoundException("no Triage.sln above the tests"));
}
