using System.Text.Json;
using Microsoft.Extensions.Time.Testing;
using Triage.Workshop.Model;

namespace Triage.Cli.Tests;

/// <summary>A bench in temporary folders, and the command run on it in this process.</summary>
internal sealed class TestBench : IDisposable
{
    private static readonly RememberedFits Fits = new(Path.Combine(Path.GetTempPath(), "triage-fits-of-tests"));

    private readonly string root = Directory.CreateTempSubdirectory("triage-cli-").FullName;

    private TestBench(params (string Name, string Folder)[] books)
    {
        foreach (var (name, folder) in books)
            Copy(folder, Folder(name));
        Books = [.. books.Select(b => b.Name)];
        Clock.SetLocalTimeZone(TimeZoneInfo.CreateCustomTimeZone("bench", TimeSpan.FromHours(1), "bench", "bench"));
    }

    public IReadOnlyList<string> Books { get; }

    /// <summary>An evening in November 2026, after every job of the demo book.</summary>
    public FakeTimeProvider Clock { get; } = new(new(2026, 11, 2, 18, 30, 0, TimeSpan.Zero));

    /// <summary>Copies of the common book and of the invented workshop's.</summary>
    public static TestBench Demo() => new(("common", Repository.Knowledge("common")), ("demo", Repository.Knowledge("demo")));

    /// <summary>A copy of a few notes that no other test depends on.</summary>
    public static TestBench Small() => new(("small", Path.Combine(AppContext.BaseDirectory, "small-book")));

    public string Folder(string book) => Path.Combine(root, book);

    public string File(string book, string path) => Path.Combine(Folder(book), path);

    /// <summary>Runs the command on this bench's books.</summary>
    public Task<Said> Run(params string[] args) => RunOn(Clock, args);

    public async Task<Said> RunOn(TimeProvider clock, params string[] args)
    {
        var (output, errors) = (new StringWriter(), new StringWriter());
        var code = await TriageCommand.RunAsync([.. args, .. Books.SelectMany(b => new[] { "--book", $"{b}={Folder(b)}" })], output, errors, clock, fits: Fits);
        return new(code, output.ToString(), errors.ToString());
    }

    /// <summary>Runs a command that must work, some minutes after the one before, and reads its JSON.</summary>
    public async Task<JsonElement> Json(params string[] args)
    {
        Clock.Advance(TimeSpan.FromMinutes(3));
        var said = await Run([.. args, "--json"]);
        Assert.True(said.Code == 0, $"triage {string.Join(' ', args)} ended with {said.Code}: {said.Errors}");
        return JsonDocument.Parse(said.Output).RootElement;
    }

    public void Dispose() => Directory.Delete(root, recursive: true);

    private static void Copy(string from, string to)
    {
        foreach (var file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            System.IO.File.Copy(file, copy);
        }
    }
}

/// <param name="Code">Exit code.</param>
internal sealed record Said(int Code, string Output, string Errors)
{
    public string[] Lines => Output.TrimEnd('\n').Split('\n');

    /// <summary>The last line of the errors.</summary>
    public string Error => Errors.TrimEnd('\n').Split('\n')[^1];
}
