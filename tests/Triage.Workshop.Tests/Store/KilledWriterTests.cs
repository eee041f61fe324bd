using Triage.Notes.Kinds;
using Xunit;

namespace Triage.Workshop.Tests.Store;

/// <summary>Kill it at any moment: no accepted write is lost, none is half done.</summary>
public sealed class KilledWriterTests
{
    private const int Kills = 8;

    [Fact]
    public async Task KilledAgainAndAgain_AcceptedLinesStay_AndTheNextOneCanWrite()
    {
        using var book = new SmallBook();
        var (accepted, random) = (new List<string>(), new Random(5));
        for (var kill = 0; kill < Kills; kill++)
        {
            using var writer = Writer.Start("lines", book.Folder, SmallBook.JobId, $"run {kill}:", "100000");
            Assert.Equal("open", writer.Next());
            for (var n = random.Next(1, 12); n > 0; n--)
                accepted.Add(writer.Next()!);
            writer.Kill();
            accepted.AddRange(writer.Rest().Where(l => l.StartsWith("run", StringComparison.Ordinal)));
        }

        var job = book.OnDisk();
        Assert.NotNull(job);
        var lines = SmallBook.Lines(job).ToHashSet();
        Assert.All(accepted, a => Assert.Contains(a, lines));
        Assert.InRange(lines.Count, accepted.Count, accepted.Count + Kills);
        await using var live = book.Open();
        Assert.Null(live.Steps.Line(SmallBook.JobId, "after all that").Refused);
        Assert.Equal(SmallBook.Lines(job).Append("after all that"), SmallBook.Lines(book.OnDisk()!));
    }

    [Fact]
    public async Task HalvesOfKilledWriters_AreNoNotes_AndAreClearedAway()
    {
        using var book = new SmallBook();
        book.Write("jobs/2026/.2026-001.md.4711.half", "---\nformat: 1\nkind: jo");
        book.Write(".bench/lock", "");

        await using var live = book.Open();

        Assert.Equal([SmallBook.JobId], live.Current.Notes.All.Select(n => n.Id));
        Assert.Empty(live.Current.Problems);
        Assert.Equal([SmallBook.JobPath], Directory.EnumerateFiles(book.At("jobs"), "*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(book.Folder, f)));
    }
}
