using Triage.Notes.Kinds;
using Xunit;

namespace Triage.Workshop.Tests.Store;

/// <summary>What was acknowledged is on the disk with its name: content, then the new name, then the folder, each waited for.</summary>
public sealed class StaysOnDiskTests
{
    private static readonly byte[] Photo = [0xFF, 0xD8, 0xFF, 0xE0, .. "a photo"u8];

    [Fact]
    public async Task Line_IsFlushed_Renamed_AndItsFolderFlushed()
    {
        using var book = new SmallBook();
        var disk = new WatchedDisk(book.Folder);
        await using var live = book.Open(disk: disk);

        Assert.Null(live.Steps.Line(SmallBook.JobId, "hums").Refused);

        Assert.Equal(["write", "flush", $"rename to {SmallBook.JobPath}", "flush folder jobs/2026"], disk.Asked);
    }

    [Fact]
    public async Task FirstMachineOfAYear_HasEveryNewFolderFlushedInTheOneAbove()
    {
        using var book = new SmallBook();
        Directory.Delete(book.At("jobs"), recursive: true);
        var disk = new WatchedDisk(book.Folder);
        await using var live = book.Open(disk: disk);

        Assert.Null(live.Steps.TakeIn(new() { Machine = "a box", Complaint = "hums" }).Refused);

        Assert.Equal(["flush folder .", "flush folder jobs", "write", "flush", "rename to jobs/2026/2026-001.md", "flush folder jobs/2026"], disk.Asked);
    }

    [Fact]
    public async Task Photo_IsOnTheDiskBeforeTheNoteNamesIt_AndOneThatIsThereAlreadyIsFlushedAgain()
    {
        using var book = new SmallBook();
        var disk = new WatchedDisk(book.Folder);
        await using var live = book.Open(disk: disk);

        Assert.Null(live.Steps.Line(SmallBook.JobId, "the board", Photo).Refused);
        var photo = Assert.Single(Directory.EnumerateFiles(book.At("jobs/2026"), "*.jpg"));
        Assert.Equal([$"rename to jobs/2026/{Path.GetFileName(photo)}", "flush folder jobs/2026", $"rename to {SmallBook.JobPath}", "flush folder jobs/2026"], disk.Asked.Where(a => a.Contains(' ', StringComparison.Ordinal)));

        disk.Asked.Clear();
        Assert.Null(live.Steps.Line(SmallBook.JobId, "again", Photo).Refused);
        Assert.Equal(["flush folder jobs/2026", $"rename to {SmallBook.JobPath}", "flush folder jobs/2026"], disk.Asked.Where(a => a.Contains(' ', StringComparison.Ordinal)));
    }

    [Fact]
    public async Task PhotoThatWasCut_IsMadeWhole_WhenItIsSentAgain()
    {
        using var book = new SmallBook();
        await using var live = book.Open();
        Assert.Null(live.Steps.Line(SmallBook.JobId, "the board", Photo).Refused);
        var photo = Directory.EnumerateFiles(book.At("jobs/2026"), "*.jpg").Single();
        File.WriteAllBytes(photo, Photo[..5]);

        Assert.Null(live.Steps.Line(SmallBook.JobId, "the board again", Photo).Refused);

        Assert.Equal(Photo, File.ReadAllBytes(photo));
    }

    [Fact]
    public async Task Settings_AreFlushedWithTheirFolder()
    {
        using var book = new SmallBook();
        var disk = new WatchedDisk(book.Folder);
        await using var live = book.Open(disk: disk);

        Assert.Null(live.Setup.Save(null, new() { ValueOfHour = 31 }));

        Assert.Equal(["write", "flush", "rename to bench.yaml", "flush folder ."], disk.Asked);
    }

    [Theory]
    [InlineData("write")]
    [InlineData("flush")]
    [InlineData("rename")]
    public async Task DiskThatFails_LeavesTheNoteAsItWas(string call)
    {
        using var book = new SmallBook();
        var disk = new WatchedDisk(book.Folder);
        await using var live = book.Open(disk: disk);
        disk.Fails = call;

        var refused = live.Steps.Line(SmallBook.JobId, "hums").Refused;

        Assert.Equal($"Cannot write in {book.Folder}: Input/output error", refused!.What);
        Assert.Equal(SmallBook.OpenJob, File.ReadAllText(book.At(SmallBook.JobPath)));
        Assert.Equal(["2026-001.md"], Directory.EnumerateFiles(book.At("jobs/2026")).Select(Path.GetFileName));
        Assert.Empty(live.Current.Notes.Find<Job>(SmallBook.JobId)!.Log);
    }

    [Fact]
    public async Task DiskThatKeepsOnlyHalf_IsFoundOut_AndTheNoteStaysAsItWas()
    {
        using var book = new SmallBook();
        await using var live = book.Open(disk: new WatchedDisk(book.Folder) { Short = true });

        var refused = live.Steps.Line(SmallBook.JobId, "hums").Refused;

        Assert.Equal($"Cannot write in {book.Folder}: The disk does not hold what was written.", refused!.What);
        Assert.Equal(SmallBook.OpenJob, File.ReadAllText(book.At(SmallBook.JobPath)));
    }

    [Fact]
    public async Task FolderThatCannotBeFlushed_IsNoAcknowledgement()
    {
        using var book = new SmallBook();
        var disk = new WatchedDisk(book.Folder);
        await using var live = book.Open(disk: disk);
        disk.Fails = "flush folder";

        var refused = live.Steps.Line(SmallBook.JobId, "hums").Refused;

        Assert.Equal($"{SmallBook.JobPath} was written, but the disk would not say that it is there to stay: Input/output error", refused!.What);
        Assert.Equal(["hums"], SmallBook.Lines(live.Current.Notes.Find<Job>(SmallBook.JobId)!));
    }

    /// <summary>The same asked of the system itself: the calls that the kernel saw.</summary>
    [Fact]
    public void Kernel_IsAskedToFlushTheFolderAfterTheRename()
    {
        Assert.SkipUnless(File.Exists("/usr/bin/strace"), "strace is not installed here.");
        using var book = new SmallBook();
        var trace = book.At("../" + Path.GetFileName(book.Folder) + ".trace");
        using (var writer = Writer.Start(["strace", "-f", "-y", "-qq", "-e", "trace=rename,renameat,renameat2,fsync,fdatasync", "-o", trace], ["lines", book.Folder, SmallBook.JobId, "x", "1"]))
            Assert.Contains("x 0", writer.Rest());

        var calls = File.ReadAllLines(trace).Where(l => l.Contains("/jobs/2026", StringComparison.Ordinal)).ToList();
        File.Delete(trace);
        Assert.Collection(calls,
            c => Assert.Matches(@"sync\(\d+<.*\.2026-001\.md\.\d+\.half>", c),
            c => Assert.Contains("rename", c, StringComparison.Ordinal),
            c => Assert.Matches(@"fsync\(\d+<[^>]*/jobs/2026>\)\s+= 0", c));
    }
}
