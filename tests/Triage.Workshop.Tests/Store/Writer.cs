using System.Diagnostics;

namespace Triage.Workshop.Tests.Store;

/// <summary>Another program that writes in a book's folder.</summary>
internal sealed class Writer : IDisposable
{
    private readonly Process process;

    private Writer(Process process) => this.process = process;

    public static Writer Start(params string[] arguments) => Start([], arguments);

    /// <param name="under">A command that starts the program in another way, such as as another user.</param>
    public static Writer Start(string[] under, string[] arguments)
    {
        string[] line = [.. under, Environment.ProcessPath is { } host && Path.GetFileNameWithoutExtension(host) == "dotnet" ? host : "dotnet", Path.Combine(AppContext.BaseDirectory, "Triage.Workshop.Writer.dll"), .. arguments];
        return new(Process.Start(new ProcessStartInfo(line[0], line[1..]) { RedirectStandardOutput = true })!);
    }

    /// <summary>What it says next; null when it has ended.</summary>
    public string? Next() => process.StandardOutput.ReadLine();

    /// <summary>Everything more that it said, to its end.</summary>
    public List<string> Rest()
    {
        var said = process.StandardOutput.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries).ToList();
        process.WaitForExit();
        return said;
    }

    /// <summary>SIGKILL: nothing in it runs any more.</summary>
    public void Kill() => process.Kill();

    public void Dispose()
    {
        if (!process.HasExited)
            process.Kill();
        process.Dispose();
    }
}
