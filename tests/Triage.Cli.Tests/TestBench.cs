using System.Text.Json;
using Microsoft.Extensions.Time.Testing;
using Triage.Workshop.Tests;

namespace Triage.Cli.Tests;

/// <summary>A bench in temporary folders, and the command run on it in this process.</summary>
internal sealed class TestBench : IDisposable
{
    private readonly string root = Directory.CreateTempSubdirectory("triage-cli-").FullName;

    private TestBench(params string[] books)
    {
        Books = books;
        Clock.SetLocalTimeZone(TimeZoneInfo.CreateCustomTimeZone("bench", TimeSpan.FromHours(1), "bench", "bench"));
    }

    public IReadOnlyList<string> Books { get; }

    /// <summary>An evening in November 2026, after every job of the demo book.</summary>
    public FakeTimeProvider Clock { get; } = new(new(2026, 11, 2, 18, 30, 0, TimeSpan.Zero));

    /// <summary>Copies of the common book and of the invented workshop's.</summary>
    public static TestBench Demo()
    {
        var bench = new TestBench("common", "demo");
        foreach (var book in bench.Books)
            BookCopy.All(Repository.Knowledge(book), bench.Folder(book));
        return bench;
    }

    /// <summary>The same with these classes of machines only.</summary>
    public static TestBench Demo(params string[] classes)
    {
        var bench = new TestBench("common", "demo");
        BookCopy.OfClasses(Repository.Knowledge(""), bench.root, classes);
        return bench;
    }

    /// <summary>A copy of a few notes that no other test depends on.</summary>
    public static TestBench Small()
    {
        var bench = new TestBench("small");
        BookCopy.All(Path.Combine(AppContext.BaseDirectory, "small-book"), bench.Folder("small"));
        return bench;
    }

    public string Folder(string book) => Path.Combine(root, book);

    public string File(string book, string path) => Path.Combine(Folder(book), path);

    /// <summary>Runs the command on this bench's books.</summary>
    public Task<Said> Run(params string[] args) => RunOn(Clock, args);

    public async Task<Said> RunOn(TimeProvider clock, params string[] args)
    {
        var (output, errors) = (new StringWriter(), new StringWriter());
        var code = await TriageCommand.RunAsync([.. args, .. Books.SelectMany(b => new[] { "--book", $"{b}={Folder(b)}" })], output, errors, clock, fits: SharedFits.OfAll);
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
}

/// <param name="Code">Exit code.</param>
internal sealed record Said(int Code, string Output, string Errors)
{
    public string[] Lines => Output.TrimEnd('\n').Split('\n');

    /// <summary>The last line of the errors.</summary>
    public string Error => Errors.TrimEnd('\n').Split('\n')[^1];
}
