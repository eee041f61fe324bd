using System.Text;
using Triage.Notes.Kinds;
using Triage.Workshop.Books;
using Triage.Workshop.Exchange.Share;
using Triage.Workshop.Steps;
using Xunit;

namespace Triage.Workshop.Tests.Store;

/// <summary>What a step or a save replaced is there to be seen and brought back.</summary>
public sealed class HistoryTests : IDisposable
{
    private readonly SmallBook book = new();

    public void Dispose() => book.Dispose();

    private string Kept => book.At($".bench/history/{SmallBook.JobPath}.jsonl");

    [Fact]
    public async Task Each_state_that_a_step_replaced_is_kept_as_it_was()
    {
        await using var live = book.Open();
        var states = new List<string>();
        foreach (var line in new[] { "lid off", "C3 short", "C3 out" })
        {
            states.Add(OnDisk());
            Assert.Null(live.Steps.Line(SmallBook.JobId, line).Refused);
        }

        var past = live.History.Of(SmallBook.JobId)!;

        Assert.Equal(states.AsEnumerable().Reverse(), past.Versions.Select(v => v.Text));
        Assert.Equal(OnDisk(), past.Text);
        Assert.Equal(book.Clock.GetUtcNow(), past.Versions[0].Until);
    }

    [Fact]
    public async Task What_an_editor_wrote_between_two_steps_is_kept_too()
    {
        await using var live = book.Open();
        Assert.Null(live.Steps.Line(SmallBook.JobId, "lid off").Refused);
        book.Write(SmallBook.JobPath, OnDisk() + "By hand.\n");

        Assert.Null(live.Steps.Line(SmallBook.JobId, "lid on").Refused);

        Assert.EndsWith("By hand.\n", live.History.Of(SmallBook.JobId)!.Versions[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_version_brought_back_keeps_what_it_replaces()
    {
        await using var live = book.Open();
        Assert.Null(live.Steps.Line(SmallBook.JobId, "lid off").Refused);
        var (was, past) = (OnDisk(), live.History.Of(SmallBook.JobId)!);

        Assert.True(live.History.BringBack(SmallBook.JobId, past.Versions[0].Version, past.Now).Written);

        Assert.Equal(SmallBook.OpenJob, OnDisk());
        Assert.Empty(live.Current.Notes.Find<Job>(SmallBook.JobId)!.Log);
        Assert.Equal(was, live.History.Of(SmallBook.JobId)!.Versions[0].Text);
    }

    [Fact]
    public async Task A_note_that_changed_since_it_was_looked_at_is_not_replaced()
    {
        await using var live = book.Open();
        Assert.Null(live.Steps.Line(SmallBook.JobId, "lid off").Refused);
        var past = live.History.Of(SmallBook.JobId)!;
        Assert.Null(live.Steps.Line(SmallBook.JobId, "lid on").Refused);
        var now = OnDisk();

        var refused = live.History.BringBack(SmallBook.JobId, past.Versions[0].Version, past.Now).Refused;

        Assert.Equal(RefusalKind.ChangedMeanwhile, refused!.Kind);
        Assert.Equal(now, OnDisk());
    }

    [Fact]
    public async Task A_version_with_an_error_is_checked_and_stays_where_it_is()
    {
        await using var live = book.Open();
        var folder = new BookFolder(live.Books[0], book.Clock);
        var broken = Encoding.UTF8.GetBytes(SmallBook.OpenJob.Replace("kind: job", "kind: jbo", StringComparison.Ordinal));
        Assert.Null(folder.Replace(SmallBook.JobPath, folder.Read(SmallBook.JobPath), broken));
        Assert.Null(folder.Replace(SmallBook.JobPath, broken, Encoding.UTF8.GetBytes(SmallBook.OpenJob)));
        live.Rescan();

        var saved = live.History.BringBack(SmallBook.JobId, live.History.Of(SmallBook.JobId)!.Versions[0].Version);

        Assert.False(saved.Written);
        Assert.Contains(saved.Problems, p => p.What.Contains("jbo", StringComparison.Ordinal));
        Assert.Equal(SmallBook.OpenJob, OnDisk());
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task A_note_that_is_gone_or_cannot_be_read_comes_back(bool gone)
    {
        await using var live = book.Open();
        Assert.Null(live.Steps.Line(SmallBook.JobId, "lid off").Refused);
        if (gone)
            File.Delete(book.At(SmallBook.JobPath));
        else
            book.Write(SmallBook.JobPath, "---\nformat: 1\nkind: jo");
        live.Rescan();
        Assert.Null(live.Current.Notes.Find<Job>(SmallBook.JobId));

        Assert.True(live.History.BringBack(SmallBook.JobId, live.History.Of(SmallBook.JobId)!.Versions[0].Version).Written);

        Assert.Equal(SmallBook.OpenJob, OnDisk());
        Assert.NotNull(live.Current.Notes.Find<Job>(SmallBook.JobId));
    }

    [Fact]
    public async Task Settings_have_a_history()
    {
        await using var live = book.Open();
        Assert.Null(live.Setup.Save(null, new() { ValueOfHour = 20 }));
        Assert.Null(live.Setup.Save(null, new() { ValueOfHour = 30 }));

        Assert.True(live.History.BringBack("bench.yaml", live.History.Of("bench.yaml")!.Versions[0].Version).Written);

        Assert.Equal(20, live.Current.Settings.ValueOfHour);
    }

    [Fact]
    public async Task Erased_at_the_owners_wish_nothing_of_it_is_left_aside()
    {
        await using var live = book.Open();
        var folder = new BookFolder(live.Books[0], book.Clock);
        Assert.Null(live.Steps.Line(SmallBook.JobId, "belongs to Hedi Amsel").Refused);
        Assert.Equal(RefusalKind.ChangedMeanwhile, folder.Replace(SmallBook.JobPath, "older"u8.ToArray(), "of Hedi Amsel"u8.ToArray())!.Kind);
        Assert.Null(live.Steps.Undo(SmallBook.JobId, 0).Refused);
        Assert.Contains(Aside(), text => text.Contains("Amsel", StringComparison.Ordinal));

        Assert.Null(live.History.Erase(SmallBook.JobId));

        Assert.DoesNotContain(Aside(), text => text.Contains("Amsel", StringComparison.Ordinal));
        Assert.Empty(live.History.Of(SmallBook.JobId)!.Versions);
    }

    [Fact]
    public async Task History_is_neither_found_nor_given_out_nor_put_under_git()
    {
        await using var live = book.Open();
        Assert.Null(live.Steps.Line(SmallBook.JobId, "zzhistory").Refused);
        Assert.Null(live.Steps.Undo(SmallBook.JobId, 0).Refused);
        var place = book.Folder + "-out";
        live.Rescan();

        Assert.Null(GivingOut.Share(live.Books[0], place, withOpenJobs: true, stop: TestContext.Current.CancellationToken).Refused);

        Assert.Contains("zzhistory", File.ReadAllText(Kept), StringComparison.Ordinal);
        Assert.Equal(0, live.Current.Find(new("zzhistory")).Total);
        Assert.Equal(["2026-001.md"], Directory.EnumerateFiles(place, "*", SearchOption.AllDirectories).Select(Path.GetFileName));
        Assert.Equal("*\n", File.ReadAllText(book.At(".bench/.gitignore")));
        Directory.Delete(place, recursive: true);
    }

    [Fact]
    public void It_takes_eight_times_the_note_at_most_and_the_newest_stay()
    {
        var folder = new BookFolder(new("demo", book.Folder, Writable: true), book.Clock);
        var random = new Random(3);
        var states = Enumerable.Range(0, 60).Select(_ => Text(random, 12_000)).ToList();
        foreach (var state in states)
            Assert.Null(folder.Replace(SmallBook.JobPath, folder.Read(SmallBook.JobPath), state));

        var kept = folder.PastOf(SmallBook.JobPath);
        Assert.InRange(new FileInfo(Kept).Length, 1, 8 * 12_000);
        Assert.InRange(kept.Length, 3, 8);
        Assert.Equal(states[..^1].TakeLast(kept.Length).Select(Convert.ToHexString), kept.Select(s => Convert.ToHexString(s.Content.Span)));
    }

    [Fact]
    public void Thirty_added_lines_take_little_more_than_the_note_itself()
    {
        var folder = new BookFolder(new("demo", book.Folder, Writable: true), book.Clock);
        for (var n = 0; n < 30; n++)
            Assert.Null(folder.Change(SmallBook.JobPath, now => [.. now, .. Encoding.UTF8.GetBytes($"{n}: {new string('x', 100)}\n")]));

        Assert.InRange(new FileInfo(Kept).Length, 1, 4 * new FileInfo(book.At(SmallBook.JobPath)).Length);
    }

    [Theory]
    [InlineData("{\"at\":\"2026")]
    [InlineData("\0\0\0\0")]
    public void A_line_torn_by_a_power_cut_spoils_no_other(string torn)
    {
        var folder = new BookFolder(new("demo", book.Folder, Writable: true), book.Clock);
        Assert.Null(folder.Change(SmallBook.JobPath, now => [.. now, .. "one\n"u8]));
        File.AppendAllText(Kept, torn);

        Assert.Null(folder.Change(SmallBook.JobPath, now => [.. now, .. "two\n"u8]));

        Assert.Equal([SmallBook.OpenJob, SmallBook.OpenJob + "one\n"], folder.PastOf(SmallBook.JobPath).Select(s => Encoding.UTF8.GetString(s.Content.Span)));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Any_bytes_come_back_as_they_were(int seed)
    {
        var folder = new BookFolder(new("demo", book.Folder, Writable: true), book.Clock);
        var random = new Random(seed);
        var states = new List<byte[]> { folder.Read(SmallBook.JobPath)! };
        for (var n = 0; n < 60; n++)
        {
            states.Add(Edited(random, states[^1]));
            Assert.Null(folder.Replace(SmallBook.JobPath, states[^2], states[^1]));
        }

        var expected = states.Take(60).Where((s, i) => !s.SequenceEqual(states[i + 1])).Select(Convert.ToHexString);
        Assert.Equal(expected, folder.PastOf(SmallBook.JobPath).Select(s => Convert.ToHexString(s.Content.Span)));
    }

    private static byte[] Edited(Random random, byte[] now)
    {
        var (from, to) = (random.Next(now.Length + 1), random.Next(now.Length + 1));
        (from, to) = (Math.Min(from, to), Math.Max(from, to));
        byte[] piece = random.Next(3) switch
        {
            0 => Encoding.UTF8.GetBytes("ü\r\nÄ€\n"),
            1 => [0xC3, (byte)'\n', 0xFF, 0],
            _ => [.. Enumerable.Range(0, random.Next(6)).Select(_ => (byte)"ab\n"[random.Next(3)])],
        };
        return [.. now[..from], .. piece, .. random.Next(4) == 0 ? now[to..] : now[Math.Min(now.Length, from + random.Next(3))..]];
    }

    private static byte[] Text(Random random, int length) => [.. Enumerable.Range(0, length).Select(n => n % 80 == 79 ? (byte)'\n' : (byte)('a' + random.Next(26)))];

    private string OnDisk() => File.ReadAllText(book.At(SmallBook.JobPath));

    private IEnumerable<string> Aside() => Directory.EnumerateFiles(book.At(".bench"), "*", SearchOption.AllDirectories).Select(File.ReadAllText);
}
