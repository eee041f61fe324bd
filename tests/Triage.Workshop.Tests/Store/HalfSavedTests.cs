using System.Text;
using Triage.Notes.Kinds;
using Xunit;

namespace Triage.Workshop.Tests.Store;

/// <summary>A note is there while its file is being written: what it said before counts, and the check says so.</summary>
public sealed class HalfSavedTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(60)]
    public async Task JobWhoseFileIsHalfWritten_IsStillThere_UntilItIsWhole(int written)
    {
        using var book = new SmallBook();
        await using var live = book.Open(watch: true);
        var text = SmallBook.OpenJob.Replace("crackles", "hums", StringComparison.Ordinal);
        using (var editor = Editor(book))
        using (new StillSaving(book.At(SmallBook.JobPath)))
        {
            foreach (var piece in Encoding.UTF8.GetBytes(text[..written]).Chunk(20))
                editor.Write(piece);
            await Eventually.Is(live, b => b.Problems.Any(p => p.Path == SmallBook.JobPath && p.What.StartsWith("The file is being saved just now", StringComparison.Ordinal)));
            for (var moment = 0; moment < 8; moment++)
            {
                Assert.Equal("crackles", live.Current.Notes.Find<Job>(SmallBook.JobId)?.Complaint);
                await Task.Delay(200, TestContext.Current.CancellationToken);
            }

            editor.Write(Encoding.UTF8.GetBytes(text[written..]));
        }

        await Eventually.Is(live, b => b.Notes.Find<Job>(SmallBook.JobId)?.Complaint == "hums" && b.Problems.IsEmpty);
    }

    [Fact]
    public async Task FileThatIsDeletedAndWrittenAnew_IsNeverMissing()
    {
        using var book = new SmallBook();
        await using var live = book.Open(watch: true);
        var missing = false;
        live.Changed += b => missing |= b.Notes.Find<Job>(SmallBook.JobId) is null;

        File.Delete(book.At(SmallBook.JobPath));
        await Task.Delay(400, TestContext.Current.CancellationToken);
        book.Write(SmallBook.JobPath, SmallBook.OpenJob.Replace("crackles", "hums", StringComparison.Ordinal));

        await Eventually.Is(live, b => b.Notes.Find<Job>(SmallBook.JobId)?.Complaint == "hums");
        Assert.False(missing);
    }

    [Fact]
    public async Task FileThatStaysBroken_IsNamedAsBroken()
    {
        using var book = new SmallBook();
        await using var live = book.Open(watch: true);

        book.Write(SmallBook.JobPath, SmallBook.OpenJob[..60]);

        await Eventually.Is(live, b => b.Notes.Find<Job>(SmallBook.JobId) is null);
        Assert.Contains(live.Current.Problems, p => p.Path == SmallBook.JobPath && p.Severity == Notes.Severity.Error);
    }

    [Fact]
    public async Task BookOpenedWhileAFileIsHalfWritten_WaitsForIt()
    {
        using var book = new SmallBook();
        using var editor = Editor(book);
        editor.Write(Encoding.UTF8.GetBytes(SmallBook.OpenJob[..60]));
        Task<LiveBench> opening;
        using (new StillSaving(book.At(SmallBook.JobPath)))
        {
            opening = Task.Run(() => book.Open(), TestContext.Current.CancellationToken);
            await Task.Delay(300, TestContext.Current.CancellationToken);
            editor.Write(Encoding.UTF8.GetBytes(SmallBook.OpenJob[60..]));
        }

        await using var live = await opening;

        Assert.NotNull(live.Current.Notes.Find<Job>(SmallBook.JobId));
    }

    [Fact]
    public async Task SettingsThatAreHalfWritten_CountAsTheyWere()
    {
        using var book = new SmallBook();
        book.Write("bench.yaml", "value-of-hour: 31\n");
        await using var live = book.Open(watch: true);
        var others = new List<double>();
        live.Changed += b => others.Add(b.Settings.ValueOfHour);

        book.Write("bench.yaml", "");
        await Eventually.Is(live, b => b.Problems.Any(p => p.Path == "bench.yaml"));
        book.Write("bench.yaml", "value-of-hour: 32\n");

        await Eventually.Is(live, b => b.Settings.ValueOfHour == 32);
        Assert.All(others, o => Assert.InRange(o, 31, 32));
    }

    private static FileStream Editor(SmallBook book) =>
        new(book.At(SmallBook.JobPath), FileMode.Create, FileAccess.Write, FileShare.ReadWrite | FileShare.Delete, bufferSize: 0);
}
