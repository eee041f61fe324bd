using System.Diagnostics;
using Triage.Notes;
using Triage.Notes.Kinds;
using Triage.Workshop.Exchange.Share;
using Xunit;

namespace Triage.Workshop.Tests.Store;

/// <summary>What leads out of the book is never followed, served or written, and what is no file hangs nothing.</summary>
public sealed class LinksTests : IDisposable
{
    private readonly SmallBook book = new();
    private readonly string outside = Directory.CreateTempSubdirectory("outside-").FullName;

    public LinksTests()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Only administrators make links there.");
        File.WriteAllText(Path.Combine(outside, "2025-001.md"), SmallBook.OpenJob.Replace(SmallBook.JobId, "2025-001", StringComparison.Ordinal));
    }

    public void Dispose()
    {
        book.Dispose();
        Directory.Delete(outside, recursive: true);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task FolderLinkedIntoTheBook_IsNotRead_BeforeOrAfterTheBeginning(bool before)
    {
        if (before)
            Directory.CreateSymbolicLink(book.At("jobs/2025"), outside);
        await using var live = book.Open(watch: true);
        if (!before)
            Directory.CreateSymbolicLink(book.At("jobs/2025"), outside);
        live.OnDisk.Reread(live.OnDisk.Home!, ["jobs/2025", "jobs/2025/2025-001.md"]);
        live.Rescan();

        book.Write("jobs/2026/2026-002.md", SmallBook.OpenJob.Replace(SmallBook.JobId, "2026-002", StringComparison.Ordinal));
        await Eventually.Is(live, b => b.Notes.Find<Job>("2026-002") is not null);

        Assert.Null(live.Current.Notes.Find<Job>("2025-001"));
    }

    [Fact]
    public async Task FolderThatBecomesALink_IsWrittenNoMore_AndItsNotesAreGone()
    {
        await using var live = book.Open(watch: true);
        Directory.Delete(book.At("jobs"), recursive: true);
        Directory.CreateDirectory(Path.Combine(outside, "2026"));
        var theirs = Path.Combine(outside, "2026/2026-001.md");
        File.WriteAllText(theirs, SmallBook.OpenJob);
        Directory.CreateSymbolicLink(book.At("jobs"), outside);

        var refused = live.Steps.Line(SmallBook.JobId, "hums").Refused;
        var taken = live.Steps.TakeIn(new() { Machine = "a box", Complaint = "hums" }).Refused;

        Assert.NotNull(refused);
        Assert.Matches("^jobs/2026/2026-00..md is reached through a link, which may lead out of the book.$", taken!.What);
        Assert.Equal(SmallBook.OpenJob, File.ReadAllText(theirs));
        Assert.Single(Directory.GetFiles(Path.Combine(outside, "2026")));
    }

    [Theory]
    [InlineData(".bench")]
    [InlineData(".bench/lock")]
    [InlineData(".bench/kept")]
    [InlineData(".bench/history")]
    public async Task BenchsOwnFolderThatIsALink_IsNotWrittenThrough(string link)
    {
        Directory.CreateDirectory(book.At(".bench"));
        if (link == ".bench")
            Directory.Delete(book.At(link));
        Directory.CreateSymbolicLink(book.At(link), Path.Combine(outside, "theirs"));
        Directory.CreateDirectory(Path.Combine(outside, "theirs"));
        await using var live = book.Open();

        _ = live.Steps.Line(SmallBook.JobId, "hums");
        _ = live.Steps.Line(SmallBook.JobId, "hums more");

        Assert.Empty(Directory.EnumerateFileSystemEntries(Path.Combine(outside, "theirs")));
    }

    [Fact]
    public async Task PhotoAndSettings_BehindALink_AreNotServed()
    {
        await using var live = book.Open();
        Assert.Null(live.Steps.Line(SmallBook.JobId, "the board", new byte[] { 0xFF, 0xD8, 0xFF, 0xE0 }).Refused);
        var photo = Directory.EnumerateFiles(book.At("jobs/2026"), "*.jpg").Single();
        File.WriteAllText(Path.Combine(outside, "secret"), "value-of-hour: 99\n");
        File.Delete(photo);
        File.CreateSymbolicLink(photo, Path.Combine(outside, "secret"));
        File.CreateSymbolicLink(book.At("bench.yaml"), Path.Combine(outside, "secret"));
        live.Rescan();

        Assert.Null(live.Steps.PhotoOf(SmallBook.JobId, Path.GetFileName(photo)));
        Assert.NotEqual(99, live.Current.Settings.ValueOfHour);
    }

    [Theory]
    [InlineData("jobs/2026/x.md")]
    [InlineData("bench.yaml")]
    [InlineData("jobs/2026/.2026-001.md.half")]
    public async Task Pipe_HangsNothing(string path)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Elsewhere a pipe is opened as any file is.");
        Make(book.At(path));
        await using var live = book.Open(watch: true);
        Make(book.At("jobs/2026/later.md"));
        live.Rescan();

        Assert.NotNull(live.Current.Notes.Find<Job>(SmallBook.JobId));
        Assert.Null(live.Steps.Line(SmallBook.JobId, "hums").Refused);
        Assert.Contains(live.Current.Problems, p => p.Path == "jobs/2026/later.md" && p.What.Contains("pipe", StringComparison.Ordinal));
        Assert.Single(BookReader.Read("demo", book.Folder).Notes);
        var given = Path.Combine(outside, "given");
        Assert.Null(GivingOut.Share(live.Books[0], given, withOpenJobs: true, stop: TestContext.Current.CancellationToken).Refused);
        Assert.Equal(["2026-001.md"], Directory.EnumerateFiles(given, "*", SearchOption.AllDirectories).Select(Path.GetFileName));
    }

    private static void Make(string pipe)
    {
        using var made = Process.Start("mkfifo", [pipe]);
        made.WaitForExit();
    }
}
