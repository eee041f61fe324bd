using Triage.Notes.Kinds;
using Xunit;

namespace Triage.Workshop.Tests.Store;

/// <summary>A step that would make its note unreadable, or lose something on the way, is refused; of it nothing is kept.</summary>
public sealed class ReadBackTests
{
    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(1e300)]
    public async Task AmountThatNoNoteCanHold_IsNotAgreed(double limit)
    {
        using var book = new SmallBook();
        await using var live = book.Open();

        var refused = live.Steps.Agree(SmallBook.JobId, new() { SpendingLimit = limit }).Refused;

        Assert.Equal(RefusalKind.NotUnderstood, refused!.Kind);
        Assert.EndsWith("Nothing of this step was kept.", refused.Instead, StringComparison.Ordinal);
        Assert.Equal(SmallBook.OpenJob, File.ReadAllText(book.At(SmallBook.JobPath)));
        Assert.NotNull(live.Current.Notes.Find<Job>(SmallBook.JobId));
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public async Task WorthThatNoNoteCanHold_TakesNothingIn(double worth)
    {
        using var book = new SmallBook();
        await using var live = book.Open();

        var refused = live.Steps.TakeIn(new() { Machine = "a box", Complaint = "hums", Worth = worth }).Refused;

        Assert.Equal(RefusalKind.NotUnderstood, refused!.Kind);
        Assert.Equal(["2026-001.md"], Directory.EnumerateFiles(book.At("jobs"), "*", SearchOption.AllDirectories).Select(Path.GetFileName));
    }

    [Fact]
    public async Task NoteThatGrowsBeyondWhatIsRead_KeepsWhatItHad()
    {
        using var book = new SmallBook();
        await using var live = book.Open();
        var long900kB = string.Concat(Enumerable.Repeat("a long story ", 70_000));
        var told = Enumerable.Range(0, 3).Select(_ => live.Steps.FollowUp(SmallBook.JobId, cameBack: false, long900kB).Refused).ToList();

        Assert.Contains(told, r => r is { Kind: RefusalKind.NotUnderstood } && r.What.StartsWith($"With this {SmallBook.JobPath} could no longer be read as it was meant: The file has ", StringComparison.Ordinal));
        var job = live.Current.Notes.Find<Job>(SmallBook.JobId);
        Assert.Equal(told.Count(r => r is null), job!.FollowUps.Length);
        Assert.Equal(job.FollowUps.Length, book.OnDisk()!.FollowUps.Length);
    }

    [Fact]
    public async Task CauseInFreeWords_IsNotListed_WhenTheJobCannotBeClosed()
    {
        using var book = new SmallBook();
        await using var live = book.Open();

        var refused = live.Steps.Close(SmallBook.JobId, new() { Outcome = JobOutcome.Mended, NewCause = "dry joint", Minutes = double.NaN }).Refused;

        Assert.Equal(RefusalKind.NotUnderstood, refused!.Kind);
        Assert.Equal(SmallBook.OpenJob, File.ReadAllText(book.At(SmallBook.JobPath)));
        Assert.Empty(live.Current.Notes.Of<Fault>());
    }

    [Fact]
    public async Task PhotoOfARefusedLine_IsTakenAway()
    {
        using var book = new SmallBook();
        await using var live = book.Open();

        var refused = live.Steps.Line(SmallBook.JobId, new string('x', 100_000), new byte[] { 0xFF, 0xD8, 0xFF, 0xE0 }).Refused;

        Assert.NotNull(refused);
        Assert.Equal(["2026-001.md"], Directory.EnumerateFiles(book.At("jobs"), "*", SearchOption.AllDirectories).Select(Path.GetFileName));
    }

    [Fact]
    public async Task SettingThatCannotBe_IsRefused_AlsoBesideOneThatIsWrongAlready()
    {
        using var book = new SmallBook();
        book.Write("bench.yaml", "value-of-hour: dear\n");
        await using var live = book.Open();

        var refused = live.Setup.Save(null, new() { CostOfDay = double.NaN });

        Assert.Equal(RefusalKind.NotUnderstood, refused!.Kind);
        Assert.Equal("value-of-hour: dear\n", File.ReadAllText(book.At("bench.yaml")));
    }
}
