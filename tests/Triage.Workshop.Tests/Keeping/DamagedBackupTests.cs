using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using Triage.Workshop.Books;
using Triage.Workshop.Keeping;
using Triage.Workshop.Tests.Store;
using Xunit;

namespace Triage.Workshop.Tests.Keeping;

/// <summary>A backup that is damaged, or that somebody made to do harm: refused, and nothing is written.</summary>
public sealed class DamagedBackupTests : IDisposable
{
    private readonly string place = Directory.CreateTempSubdirectory("backup-").FullName;
    private readonly SmallBook book = new();

    public DamagedBackupTests()
    {
        book.Write("faults/a.md", "a fault");
        BackingUp.BackUp(new("demo", book.Folder, Trust.Own, Writable: true), Zip, book.Clock);
    }

    public void Dispose()
    {
        book.Dispose();
        Directory.Delete(place, recursive: true);
    }

    private string Zip => Path.Combine(place, "backup.zip");

    private string Into => Path.Combine(place, "again");

    [Fact]
    public void The_damaged_file_is_named()
    {
        Change(zip => Rewrite(zip, "book/faults/a.md", "b fault"));

        Assert.Equal("“faults/a.md” in the backup is damaged: it is not what was put in.", Refused().What);
    }

    [Fact]
    public void The_missing_file_is_named()
    {
        Change(zip => zip.GetEntry("book/faults/a.md")!.Delete());

        Assert.Equal("“faults/a.md” is missing in the backup.", Refused().What);
    }

    [Fact]
    public void A_file_put_in_afterwards_is_named()
    {
        Change(zip => Rewrite(zip, "book/.bench/more.md", "more"));

        Assert.StartsWith("“book/.bench/more.md” was put into the backup afterwards", Refused().What, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("book/../../out.md")]
    [InlineData("/out.md")]
    [InlineData("book/a/../../../out.md")]
    [InlineData("book\\..\\..\\out.md")]
    [InlineData("../out.md")]
    public void A_name_that_leads_out_is_refused_though_the_manifest_lists_it(string name)
    {
        Change(zip =>
        {
            Rewrite(zip, name, "out");
            Relist(zip, name, "out");
        });

        Assert.Contains("leads out", Refused().What, StringComparison.Ordinal);
        Assert.False(File.Exists(Path.Combine(place, "out.md")));
    }

    [Fact]
    public void A_link_is_refused_though_the_manifest_lists_it()
    {
        Change(zip =>
        {
            Rewrite(zip, "book/etc", "/etc").ExternalAttributes = 0xA1FF << 16;
            Relist(zip, "book/etc", "/etc");
        });

        Assert.Contains("is a link", Refused().What, StringComparison.Ordinal);
    }

    [Fact]
    public void Many_files_that_swell_only_together_are_refused_before_one_is_written()
    {
        var zeros = new string('0', 900_000);
        Change(zip =>
        {
            foreach (var n in Enumerable.Range(0, 40))
            {
                Rewrite(zip, $"book/{n}.md", zeros);
                Relist(zip, $"book/{n}.md", zeros);
            }
        });

        Assert.Contains("would swell to 36", Refused().What, StringComparison.Ordinal);
    }

    [Fact]
    public void A_book_given_out_is_no_backup()
    {
        Change(zip => zip.GetEntry("manifest.sha256")!.Delete());

        Assert.Contains("triage take", Refused().Instead, StringComparison.Ordinal);
    }

    [Fact]
    public void Whatever_byte_is_damaged_it_is_refused_or_all_of_it_is_right()
    {
        var (whole, right, random) = (File.ReadAllBytes(Zip), Folders.Content(book.Folder), new Random(7));
        for (var n = 0; n < 300; n++)
        {
            var damaged = n % 3 == 0 ? whole[..random.Next(whole.Length)] : [.. whole];
            if (n % 3 != 0)
                damaged[random.Next(damaged.Length)] ^= (byte)(1 << random.Next(8));
            File.WriteAllBytes(Zip, damaged);

            if (Restoring.Restore(Zip, Into, stop: TestContext.Current.CancellationToken).Refused is null)
            {
                Assert.Equal(right, Folders.Content(Into));
                Directory.Delete(Into, recursive: true);
            }

            Assert.Equal([Zip], Directory.GetFileSystemEntries(place));
        }
    }

    private Refusal Refused()
    {
        var refused = Restoring.Restore(Zip, Into).Refused;
        Assert.Equal([Zip], Directory.GetFileSystemEntries(place));
        return refused!;
    }

    private void Change(Action<ZipArchive> change)
    {
        using var zip = ZipFile.Open(Zip, ZipArchiveMode.Update);
        change(zip);
    }

    private static ZipArchiveEntry Rewrite(ZipArchive zip, string name, string text)
    {
        zip.GetEntry(name)?.Delete();
        var entry = zip.CreateEntry(name);
        using var stream = entry.Open();
        stream.Write(Encoding.UTF8.GetBytes(text));
        return entry;
    }

    private static void Relist(ZipArchive zip, string name, string text)
    {
        string listed;
        using (var reader = new StreamReader(zip.GetEntry("manifest.sha256")!.Open()))
            listed = reader.ReadToEnd();
        var path = name.StartsWith("book/", StringComparison.Ordinal) ? name : $"book/{name}";
        Rewrite(zip, "manifest.sha256", $"{listed}{Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)))}  {path}\n");
    }
}
