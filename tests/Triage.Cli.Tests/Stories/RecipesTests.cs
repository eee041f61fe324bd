using System.Diagnostics;
using System.IO.Compression;

namespace Triage.Cli.Tests.Stories;

/// <summary>What the promise says to do when something went wrong, run as it is written there.</summary>
public sealed class RecipesTests : IDisposable
{
    private const string Note = "2026-001.md", Photo = "photos/face.png";

    private static readonly Dictionary<string, string> Recipes = Page();

    private readonly string folder = Directory.CreateTempSubdirectory("recipe-").FullName;

    public RecipesTests()
    {
        Workshop.Tests.BookCopy.All(Path.Combine(AppContext.BaseDirectory, "small-book"), At("bench"));
        Directory.CreateDirectory(Path.GetDirectoryName(At("bench/" + Photo))!);
        File.Copy(Path.Combine(Repository.Knowledge("demo"), "drawings", "corvane-k61-mb-1.png"), At("bench/" + Photo));
        Write("bench/" + Note, Read("bench/" + Note).Replace("words: \"no chime at all\"}", $"words: \"no chime at all\", photos: [{Photo}]}}", StringComparison.Ordinal));
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);

    public static TheoryData<string> Headings => [.. Recipes.Keys];

    [Theory]
    [MemberData(nameof(Headings))]
    public async Task Recipe_does_what_it_says(string heading)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The recipes are for a Unix shell.");
        var before = Read("bench/" + Note);
        if (heading != "Before anything goes wrong")
            await Run("triage verify && " + Recipes["Before anything goes wrong"]);
        var then = await GoWrong(heading);

        await then(before, await Run(Recipes[heading].Replace("VERSION", await Version(heading), StringComparison.Ordinal)));
    }

    /// <summary>Makes happen what the heading says.</summary>
    /// <returns>What is to be right afterwards, given the note as it was and what was printed.</returns>
    private async Task<Func<string, string, Task>> GoWrong(string heading)
    {
        switch (heading)
        {
            case "Before anything goes wrong":
                return Done((_, said) => Assert.True(File.Exists(At("backup.zip")), said));
            case "The folder or the disk is gone":
                Directory.Delete(At("bench"), recursive: true);
                return Done((before, said) => Assert.Equal((before, true), (Read("bench/" + Note), said.Contains(" 0 errors", StringComparison.Ordinal))));
            case "The power went, or the bench was killed":
                Write($"bench/.{Note}.4711.half", "---\nformat: 1");
                return Done((_, said) => Assert.Contains("nothing is damaged or missing", said, StringComparison.Ordinal));
            case "A note was spoiled":
                await Run("triage line 2026-001 \"lid off\"");
                Write("bench/" + Note, "---\nformat: 1\nkind: jo");
                return Done((before, _) => Assert.Equal(before, Read("bench/" + Note)));
            case "A note's file was deleted":
                File.Delete(At("bench/" + Note));
                return Done((before, said) => Assert.Equal((before, true), (Read("bench/" + Note), said.Contains("nothing is damaged or missing", StringComparison.Ordinal))));
            case "A photo is missing or damaged":
                File.Delete(At("bench/" + Photo));
                return Done((_, said) =>
                {
                    Assert.Contains($"The photo {Photo} is not there.", said, StringComparison.Ordinal);
                    Assert.Contains("nothing is damaged or missing", said, StringComparison.Ordinal);
                });
            case "The backup is damaged":
                Spoil();
                return Done((before, said) =>
                {
                    Assert.Contains("“chime.md” in the backup is damaged", said, StringComparison.Ordinal);
                    Assert.Contains("book/chime.md: FAILED", said, StringComparison.Ordinal);
                    Assert.Equal(before, Read("by-hand/book/" + Note));
                });
            case "Two people changed one note":
                Write("bench/.bench/kept/2026-001.20261102-080000-000.md", "mine");
                return Done((_, said) =>
                {
                    Assert.Contains("This text found no place in its note", said, StringComparison.Ordinal);
                    Assert.EndsWith("2026-001.20261102-080000-000.md\n", said, StringComparison.Ordinal);
                });
            case "A merge left its marks in a note":
                await Run("git -C bench init -q && git -C bench add -A && git -C bench -c user.name=a -c user.email=a@b.example commit -qm start");
                Write("bench/" + Note, Read("bench/" + Note).Replace("technician:", "<<<<<<< ours\ntechnician:", StringComparison.Ordinal));
                return Done((before, said) =>
                {
                    Assert.Contains($"{Note}:8:", said, StringComparison.Ordinal);
                    Assert.EndsWith(" 0 errors", said.TrimEnd()[..(said.TrimEnd().LastIndexOf(" errors", StringComparison.Ordinal) + " errors".Length)], StringComparison.Ordinal);
                    Assert.Equal(before, Read("bench/" + Note));
                });
            case "Another program holds the book":
                using (Process.Start("flock", [At("bench/.bench/lock"), "sleep", "3"]))
                    return Done((_, said) => Assert.True(Read("bench/" + Note).Contains("C3 measured again", StringComparison.Ordinal), said));
            case "An owner wants to be forgotten":
                await Run("triage line 2026-001 zzprivate && triage undo 2026-001 1");
                return Done((_, _) => Assert.DoesNotContain(Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories).Where(f => !f.EndsWith(".zip", StringComparison.Ordinal)), f => File.ReadAllText(f).Contains("zzprivate", StringComparison.Ordinal)));
            default:
                throw new InvalidOperationException($"The promise has a recipe that no test tries: {heading}");
        }
    }

    private async Task<string> Version(string heading) => heading != "A note was spoiled" ? ""
        : System.Text.Json.JsonDocument.Parse(await Run("triage history 2026-001 --json")).RootElement.GetProperty("versions")[0].GetProperty("version").GetString()![..8];

    private void Spoil()
    {
        using var zip = ZipFile.Open(At("backup.zip"), ZipArchiveMode.Update);
        zip.GetEntry("book/chime.md")!.Delete();
        using var stream = zip.CreateEntry("book/chime.md").Open();
        stream.Write("spoiled"u8);
    }

    /// <summary>Runs lines of a shell, with the built program as <c>triage</c>.</summary>
    private async Task<string> Run(string lines)
    {
        var script = $"triage() {{ dotnet '{Path.Combine(AppContext.BaseDirectory, "triage.dll")}' \"$@\"; }}\nexec 2>&1\n{lines}";
        var start = new ProcessStartInfo("bash", ["-c", script]) { RedirectStandardOutput = true, WorkingDirectory = folder };
        start.Environment["TRIAGE_BOOKS"] = "mine=bench";
        using var shell = Process.Start(start)!;
        var said = await shell.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await shell.WaitForExitAsync(TestContext.Current.CancellationToken);
        return said;
    }

    private static Func<string, string, Task> Done(Action<string, string> right) => (before, said) =>
    {
        right(before, said);
        return Task.CompletedTask;
    };

    private static Dictionary<string, string> Page() => File.ReadAllText(Repository.Knowledge("PROMISE.md")).Split("\n## ").Skip(1)
        .Where(s => s.Contains("```sh\n", StringComparison.Ordinal))
        .ToDictionary(s => s.Split('\n')[0], s => s.Split("```sh\n")[1].Split("```")[0]);

    private string At(string path) => Path.Combine(folder, path);

    private string Read(string path) => File.ReadAllText(At(path));

    private void Write(string path, string text)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(At(path))!);
        File.WriteAllText(At(path), text);
    }
}
