using Triage.Notes.Kinds;
using Triage.Workshop.Books;
using Triage.Workshop.Keeping;
using Triage.Workshop.Tests.Store;
using Xunit;

namespace Triage.Workshop.Tests.Keeping;

/// <summary>A book in one file, and back again.</summary>
public sealed class BackupTests : IDisposable
{
    private readonly string place = Directory.CreateTempSubdirectory("backup-").FullName;

    public void Dispose() => Directory.Delete(place, recursive: true);

    private string Zip => Path.Combine(place, "backup.zip");

    private string Into => Path.Combine(place, "again");

    [Fact]
    public Task After_random_steps_every_byte_comes_back() => ComesBack(DemoBench.OpenSmall(watch: true, "electronic-keyboard"), steps: 40);

    [Fact]
    [Trait("run", "thorough")]
    public Task After_a_thousand_random_steps_every_byte_comes_back() => ComesBack(DemoBench.Open(watch: true), steps: 1000);

    private async Task ComesBack(DemoBench used, int steps)
    {
        await using var bench = used;
        new RandomSteps(bench.Live, seed: steps).Take(steps);
        var before = Folders.Content(bench.Books[0].Folder);

        Assert.Null(BackingUp.BackUp(bench.Books[0], Zip, bench.Clock).Refused);
        var restored = Restoring.Restore(Zip, Into);

        Assert.Null(restored.Refused);
        Assert.Equal(before, Folders.Content(Into));
        var looked = Verifying.Verify(bench.Books[0] with { Folder = Into }, bench.Clock);
        Assert.Empty(looked.Damage);
        Assert.Empty(looked.Edited);
    }

    [Fact]
    public async Task Made_while_others_write_it_holds_whole_notes_and_every_line_that_was_accepted_before()
    {
        using var book = new SmallBook();
        await using var live = book.Open();
        using var writer = Writer.Start("lines", book.Folder, SmallBook.JobId, "line", "100000");
        Assert.Equal("open", writer.Next());
        for (var n = 0; n < 3; n++)
        {
            var accepted = Enumerable.Range(0, 3).Select(_ => writer.Next()!).ToList();
            var photo = live.Steps.Line(SmallBook.JobId, $"photo {n}", RandomSteps.Photo(n));
            Assert.Null(photo.Refused);
            Assert.Null(BackingUp.BackUp(live.Books[0], Path.Combine(place, $"{n}.zip"), book.Clock, stop: TestContext.Current.CancellationToken).Refused);

            Assert.Null(Restoring.Restore(Path.Combine(place, $"{n}.zip"), Path.Combine(place, $"{n}"), stop: TestContext.Current.CancellationToken).Refused);
            using var again = new SmallBookAt(Path.Combine(place, $"{n}"));
            var job = again.Job!;
            Assert.Empty(accepted.Except(SmallBook.Lines(job)));
            Assert.All(job.Log.SelectMany(e => e.Photos), p => Assert.True(File.Exists(Path.Combine(place, $"{n}", p))));
        }

        writer.Kill();
    }

    [Fact]
    public void A_photo_that_comes_while_the_others_are_packed_is_in_it()
    {
        using var book = new SmallBook();
        book.Write("jobs/2026/a.jpg", "a");
        var late = new Late(() => book.Write("jobs/2026/b.jpg", "b"));

        var made = BackingUp.BackUp(Source(book), Zip, book.Clock, late, stop: TestContext.Current.CancellationToken);

        Assert.Equal(3, made.Files);
    }

    [Fact]
    public void Neither_links_nor_keys_nor_what_git_keeps_are_in_it_and_that_is_said()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows makes links only for some.");
        using var book = new SmallBook();
        book.Write(".git/HEAD", "ref");
        book.Write(".gitignore", "*.tmp");
        book.Write(".bench/keys/key.xml", "secret");
        book.Write(".bench/kept/2026-001.md", "kept");
        File.CreateSymbolicLink(book.At("jobs/out.md"), "/etc/hostname");
        Directory.CreateSymbolicLink(book.At("etc"), "/etc");

        var made = BackingUp.BackUp(Source(book), Zip, book.Clock, stop: TestContext.Current.CancellationToken);
        Restoring.Restore(Zip, Into, stop: TestContext.Current.CancellationToken);

        Assert.Equal([".git", "etc", "jobs/out.md"], made.LeftOut.Select(l => l.Path));
        Assert.Equal([".bench/kept/2026-001.md", ".gitignore", SmallBook.JobPath], Folders.Content(Into).Keys);
    }

    [Fact]
    public void Who_may_read_a_note_stays_and_nobody_else_reads_the_backup()
    {
        using var book = new SmallBook();
        if (OperatingSystem.IsWindows())
            return;
        var mode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        File.SetUnixFileMode(book.At(SmallBook.JobPath), mode);

        BackingUp.BackUp(Source(book), Zip, book.Clock, stop: TestContext.Current.CancellationToken);
        Restoring.Restore(Zip, Into, stop: TestContext.Current.CancellationToken);

        Assert.Equal(mode, File.GetUnixFileMode(Zip));
        Assert.Equal(mode, File.GetUnixFileMode(Path.Combine(Into, SmallBook.JobPath)));
    }

    [Fact]
    public void Neither_a_backup_nor_a_folder_is_overwritten_and_nothing_is_put_into_a_book()
    {
        using var book = new SmallBook();
        book.Write(".bench/kept/a.md", "");
        Assert.Null(BackingUp.BackUp(Source(book), Zip, book.Clock, stop: TestContext.Current.CancellationToken).Refused);
        Directory.CreateDirectory(Into);
        File.WriteAllText(Path.Combine(Into, "mine"), "mine");

        Refusal?[] refused =
        [
            BackingUp.BackUp(Source(book), Zip, book.Clock, stop: TestContext.Current.CancellationToken).Refused, BackingUp.BackUp(Source(book), book.At("backup.zip"), book.Clock, stop: TestContext.Current.CancellationToken).Refused,
            Restoring.Restore(Zip, Into, stop: TestContext.Current.CancellationToken).Refused, Restoring.Restore(Zip, Zip, stop: TestContext.Current.CancellationToken).Refused, Restoring.Restore(Zip, book.At("jobs/again"), stop: TestContext.Current.CancellationToken).Refused,
        ];

        Assert.All(refused, r => Assert.Equal(RefusalKind.NotAllowed, r!.Kind));
        Assert.Equal(["mine"], Folders.Content(Into).Keys);
        Assert.False(Directory.Exists(book.At("jobs/again")));
        Assert.Equal(2, Directory.GetFileSystemEntries(place).Length);
    }

    [Fact]
    public void A_disk_that_is_full_leaves_no_half_backup()
    {
        using var book = new SmallBook();
        Assert.SkipUnless(File.Exists("/dev/full"), "There is no disk here that is always full.");

        var refused = BackingUp.BackUp(Source(book), "/proc/backup.zip", book.Clock, stop: TestContext.Current.CancellationToken).Refused;

        Assert.Equal(RefusalKind.CannotWrite, refused!.Kind);
        Assert.StartsWith("Cannot write /proc/backup.zip: ", refused.What, StringComparison.Ordinal);
    }

    private static BookSource Source(SmallBook book) => new("demo", book.Folder, Trust.Own, Writable: true);

    private sealed class SmallBookAt(string folder) : IDisposable
    {
        public Job? Job => Notes.Parsing.NoteReader.Read("demo", SmallBook.JobPath, File.ReadAllBytes(Path.Combine(folder, SmallBook.JobPath))) is { Note: Job job, Problems.IsEmpty: true } ? job : null;

        public void Dispose() => Directory.Delete(folder, recursive: true);
    }

    /// <summary>Does something once the first file is packed.</summary>
    private sealed class Late(Action act) : IProgress<int>
    {
        public void Report(int value)
        {
            if (value == 1)
                act();
        }
    }
}
