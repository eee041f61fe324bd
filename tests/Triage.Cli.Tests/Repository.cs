namespace Triage.Cli.Tests;

/// <summary>Where this repository lies.</summary>
internal static class Repository
{
    public static string Root { get; } = Up(AppContext.BaseDirectory);

    public static string Knowledge(string book) => Path.Combine(Root, "kb", book);

    private static string Up(string folder) =>
        File.Exists(Path.Combine(folder, "Triage.sln")) ? folder : Up(Path.GetDirectoryName(folder) ?? throw new DirectoryNotFoundException("Triage.sln is in no folder above the tests."));
}
