using Triage.Service.Http;
using Xunit;

namespace Triage.Service.Tests;

/// <summary>A share or a backup is packed aside; a process killed while it packs leaves its folder to be swept, and nobody else's.</summary>
public class PassingFolderTests
{
    [Fact]
    public void What_a_killed_process_left_is_swept_and_what_is_in_use_stays()
    {
        using var inUse = PassingFolder.Make();
        File.WriteAllText(Path.Combine(inUse.Place, "book.zip"), "being packed");
        var left = Directory.CreateTempSubdirectory("bench-passing-").FullName;
        File.WriteAllText(Path.Combine(left, ".in-use"), "");
        File.WriteAllText(Path.Combine(left, "book.zip"), "half of one");
        var anothers = Directory.CreateTempSubdirectory("passing-").FullName;
        try
        {
            PassingFolder.Sweep();
            Assert.False(Directory.Exists(left));
            Assert.True(File.Exists(Path.Combine(inUse.Place, "book.zip")));
            Assert.True(Directory.Exists(anothers));
        }
        finally
        {
            Directory.Delete(anothers);
        }

        inUse.Dispose();
        Assert.False(Directory.Exists(inUse.Place));
    }
}
