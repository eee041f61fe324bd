using System.Diagnostics;
using Xunit;

namespace Triage.Workshop.Tests.Store;

/// <summary>Folders that cannot be written: a clear message, and nothing half done.</summary>
public sealed class UnwritableFolderTests
{
    [Fact]
    public async Task FileWhereTheLockBelongs_IsRefused_AndTheRestGoesOn()
    {
        using var book = new SmallBook();
        book.Write(".bench", "in the way");
        await using var live = book.Open();

        var done = live.Steps.Line(SmallBook.JobId, "hello");

        Assert.Equal(RefusalKind.CannotWrite, done.Refused!.Kind);
        Assert.StartsWith($"Cannot write in {book.Folder}: ", done.Refused.What, StringComparison.Ordinal);
        Assert.Equal(SmallBook.OpenJob, File.ReadAllText(book.At(SmallBook.JobPath)));
        Assert.Equal(1, live.Current.Find(new("crackles")).Total);
    }

    [Fact]
    public void FolderOfSomebodyElse_IsReadButNotWritten()
    {
        Assert.SkipUnless(File.Exists("/usr/bin/setpriv") && Environment.UserName == "root", "Only root may start a program as another user.");
        using var book = new SmallBook();
        Open(book.Folder);

        using var nobody = Writer.Start(["setpriv", "--reuid=65534", "--regid=65534", "--clear-groups"], ["lines", book.Folder, SmallBook.JobId, "x", "1"]);
        var said = nobody.Rest();

        Assert.Equal("open", said[0]);
        Assert.StartsWith($"refused Cannot write in {book.Folder}: ", said[1], StringComparison.Ordinal);
        Assert.Equal(SmallBook.OpenJob, File.ReadAllText(book.At(SmallBook.JobPath)));
    }

    [Fact]
    public async Task FullDisk_IsRefused_AndNothingIsHalfDone()
    {
        var folder = Directory.CreateTempSubdirectory("full-").FullName;
        Assert.SkipUnless(Run("mount", "-t", "tmpfs", "-o", "size=64k", "none", folder), "Mounting a small disk is not allowed here.");
        try
        {
            using var book = new SmallBook(Path.Combine(folder, "book"));
            await using var live = book.Open();
            Assert.Null(live.Steps.Line(SmallBook.JobId, "while there is room").Refused);
            FillUp(Path.Combine(folder, "ballast"));
            var before = File.ReadAllBytes(book.At(SmallBook.JobPath));

            var done = live.Steps.Line(SmallBook.JobId, new string('x', 900));

            Assert.Equal(RefusalKind.CannotWrite, done.Refused!.Kind);
            Assert.EndsWith("Nothing was written. Look for a full disk or a read-only folder, then try again.", done.Refused.ToString(), StringComparison.Ordinal);
            Assert.Equal(before, File.ReadAllBytes(book.At(SmallBook.JobPath)));
            Assert.Equal(["2026-001.md"], Directory.EnumerateFiles(book.At("jobs/2026")).Select(Path.GetFileName));
            File.Delete(Path.Combine(folder, "ballast"));
            Assert.Null(live.Steps.Line(SmallBook.JobId, "there is room again").Refused);
        }
        finally
        {
            Run("umount", folder);
            Directory.Delete(folder);
        }
    }

    private static void FillUp(string file)
    {
        using var ballast = new FileStream(file, FileMode.Create, FileAccess.Write, FileShare.None, bufferSize: 0);
        try
        {
            while (true)
                ballast.Write(new byte[512]);
        }
        catch (IOException)
        {
            // full, as wanted
        }
    }

    private static void Open(string folder)
    {
        var everybody = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute | UnixFileMode.GroupRead | UnixFileMode.GroupExecute | UnixFileMode.OtherRead | UnixFileMode.OtherExecute;
        if (!OperatingSystem.IsWindows())
            File.SetUnixFileMode(folder, everybody);
    }

    private static bool Run(string command, params string[] arguments)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo(command, arguments) { RedirectStandardError = true })!;
            process.WaitForExit();
            return process.ExitCode == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }
}
