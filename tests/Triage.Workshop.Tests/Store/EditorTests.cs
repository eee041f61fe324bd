using System.Text;
using Triage.Notes.Kinds;
using Triage.Workshop.Books;
using Triage.Workshop.Steps;
using Xunit;

namespace Triage.Workshop.Tests.Store;

/// <summary>An editor saves in place and in pieces, and knows no lock: neither its text nor a step gets lost.</summary>
public sealed class EditorTests
{
    [Fact]
    public async Task StepWhileAnEditorSavesInPieces_WaitsForIt_AndBothStay()
    {
        using var book = new SmallBook();
        await using var live = book.Open();
        var text = SmallBook.OpenJob + "What the person typed.\n";
        using var editor = new FileStream(book.At(SmallBook.JobPath), FileMode.Create, FileAccess.Write, FileShare.ReadWrite | FileShare.Delete, bufferSize: 0);
        editor.Write(Encoding.UTF8.GetBytes(text[..140]));

        Task<StepResult> step;
        using (new StillSaving(book.At(SmallBook.JobPath)))
        {
            step = Task.Run(() => live.Steps.Line(SmallBook.JobId, "hums"), TestContext.Current.CancellationToken);
            foreach (var piece in Encoding.UTF8.GetBytes(text[140..]).Chunk(40))
            {
                await Task.Delay(300, TestContext.Current.CancellationToken);
                editor.Write(piece);
            }
        }

        Assert.Null((await step).Refused);
        Assert.Contains("What the person typed.", File.ReadAllText(book.At(SmallBook.JobPath)), StringComparison.Ordinal);
        Assert.Equal(["hums"], SmallBook.Lines(book.OnDisk()!));
    }

    [Fact]
    public async Task EditorThatGoesOnAfterAPause_HasItsTextKept_AndThePersonIsTold()
    {
        using var book = new SmallBook();
        await using var live = book.Open();
        using (var editor = new FileStream(book.At(SmallBook.JobPath), FileMode.Open, FileAccess.Write, FileShare.ReadWrite | FileShare.Delete, bufferSize: 0))
        {
            Assert.Null(live.Steps.Line(SmallBook.JobId, "hums").Refused);
            editor.Seek(0, SeekOrigin.End);
            editor.Write("What came too late.\n"u8);
        }

        await Task.Delay(TimeSpan.FromSeconds(11), TestContext.Current.CancellationToken);
        var told = live.Steps.Line(SmallBook.JobId, "still hums");

        var kept = Assert.Single(live.OnDisk.Home!.Kept.All);
        Assert.Equal(SmallBook.OpenJob + "What came too late.\n", File.ReadAllText(book.At(kept)));
        Assert.Equal([kept], told.Kept);
        Assert.Contains(told.Remarks, r => r.Contains(kept, StringComparison.Ordinal));
        Assert.Contains(live.Current.Problems, p => p.Path == kept);
        Assert.Equal(["hums", "still hums"], SmallBook.Lines(book.OnDisk()!));
    }

    [Fact]
    public async Task StepsOfSeveralBenches_DoNotWaitForEachOther()
    {
        using var book = new SmallBook();
        await using var one = book.Open();
        await using var other = book.Open();
        var folder = other.OnDisk.Home!;
        Assert.Null(one.Steps.Line(SmallBook.JobId, "hums").Refused);

        var looks = 0;
        Assert.Null(folder.Change(SmallBook.JobPath, now =>
        {
            looks++;
            Assert.True(SavedNow.Is(book.At(SmallBook.JobPath)), "The file was written more than a second ago: it was waited for.");
            return now;
        }));
        Assert.Equal(1, looks);
    }

    [Fact]
    public async Task WhatNobodyWroteIntoAnyMore_IsLetGo_AndOfTheKeptOnesTheNewestStay()
    {
        using var book = new SmallBook();
        await using var live = book.Open();
        Assert.Null(live.Steps.Line(SmallBook.JobId, "hums").Refused);
        Assert.Single(Directory.GetFiles(book.At(".bench/kept")));
        for (var n = 0; n < KeptTexts.Most + 5; n++)
            _ = live.OnDisk.Home!.Replace(SmallBook.JobPath, "other"u8.ToArray(), Encoding.UTF8.GetBytes($"refused {n}"));
        Assert.Equal(KeptTexts.Most, live.OnDisk.Home!.Kept.All.Length);

        await Task.Delay(TimeSpan.FromSeconds(11), TestContext.Current.CancellationToken);
        live.OnDisk.Home!.CleanUp();

        Assert.DoesNotContain(Directory.GetFiles(book.At(".bench/kept")), f => Path.GetFileName(f).StartsWith('.'));
        Assert.Equal(SmallBook.JobId, Assert.Single(live.Current.Notes.All).Id);
    }
}
