using Triage.Workshop.Books;
using Triage.Workshop.Keeping;
using Triage.Workshop.Tests.Store;
using Xunit;

namespace Triage.Workshop.Tests.Keeping;

/// <summary>What is damaged, missing or shorter is told from what somebody edited.</summary>
public sealed class VerifyTests : IDisposable
{
    private readonly SmallBook book = new();

    public void Dispose() => book.Dispose();

    private BookSource Source => new("demo", book.Folder, Trust.Own, Writable: true);

    [Fact]
    public async Task What_the_bench_wrote_is_right_and_taking_back_is_no_loss()
    {
        await using var live = book.Open();
        live.Steps.Line(SmallBook.JobId, "lid off");
        live.Steps.Line(SmallBook.JobId, "as found", RandomSteps.Photo(1));
        live.Steps.Undo(SmallBook.JobId, 0);

        var found = Verify();

        Assert.Equal((2, 0, 0), (found.Files, found.New, found.Edited.Length));
        Assert.Empty(found.Damage);
    }

    [Fact]
    public void An_edit_by_hand_is_no_damage_and_is_said_once()
    {
        Assert.Equal(1, Verify().New);
        book.Write(SmallBook.JobPath, SmallBook.OpenJob + "By hand.\n");

        var (first, second) = (Verify(), Verify());

        Assert.Equal([SmallBook.JobPath], first.Edited);
        Assert.Empty(first.Damage.AddRange(second.Damage));
        Assert.Empty(second.Edited);
    }

    [Fact]
    public void A_byte_that_changed_by_itself_is_damage_until_it_is_mended()
    {
        Verify();
        var time = File.GetLastWriteTimeUtc(book.At(SmallBook.JobPath));
        book.Write(SmallBook.JobPath, SmallBook.OpenJob.Replace("crackles", "crackled", StringComparison.Ordinal));
        File.SetLastWriteTimeUtc(book.At(SmallBook.JobPath), time);

        Assert.Contains("nobody edited it", Damage(), StringComparison.Ordinal);
        Assert.Contains("nobody edited it", Damage(), StringComparison.Ordinal);
        book.Write(SmallBook.JobPath, SmallBook.OpenJob);
        Assert.Empty(Verify().Damage);
    }

    [Fact]
    public async Task A_log_shorter_than_it_was_is_said_until_it_is_accepted()
    {
        await using var live = book.Open();
        var one = File.ReadAllText(book.At(SmallBook.JobPath));
        live.Steps.Line(SmallBook.JobId, "lid off");
        live.Steps.Line(SmallBook.JobId, "lid on");
        book.Write(SmallBook.JobPath, one);

        Assert.StartsWith("Its log has 0 entries, and had 2", Damage(), StringComparison.Ordinal);
        Assert.NotEmpty(Verify(accept: true).Damage);
        Assert.Empty(Verify().Damage);
    }

    [Fact]
    public void A_note_cut_in_the_middle_is_damage()
    {
        Verify();
        book.Write(SmallBook.JobPath, SmallBook.OpenJob[..60]);

        Assert.StartsWith("It was a sound note and cannot be used any more", Damage(), StringComparison.Ordinal);
    }

    [Fact]
    public void An_id_that_is_lost_is_damage_and_one_that_moved_is_none()
    {
        Verify();
        book.Write("jobs/elsewhere.md", SmallBook.OpenJob);
        File.Delete(book.At(SmallBook.JobPath));
        var moved = Verify();
        book.Write("jobs/elsewhere.md", SmallBook.OpenJob.Replace("id: 2026-001", "id: 2026-002", StringComparison.Ordinal));
        var changed = Damage();
        File.Delete(book.At("jobs/elsewhere.md"));

        Assert.Equal([SmallBook.JobPath], moved.Moved);
        Assert.Empty(moved.Damage);
        Assert.StartsWith("It was note 2026-001, and no note has that id any more", changed, StringComparison.Ordinal);
        Assert.StartsWith("The file of note 2026-001 is gone", Damage(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_photo_that_is_missing_cut_or_another_is_damage()
    {
        await using var live = book.Open();
        var photo = live.Steps.Line(SmallBook.JobId, "as found", RandomSteps.Photo(1)).Job!.Log[0].Photos[0];

        File.WriteAllBytes(book.At(photo), RandomSteps.Photo(1)[..40]);
        Assert.StartsWith("It is no whole photo or drawing", Damage(), StringComparison.Ordinal);
        File.WriteAllBytes(book.At(photo), RandomSteps.Photo(2));
        Assert.StartsWith("It is not the photo or drawing that was kept under this name", Damage(), StringComparison.Ordinal);
        File.Delete(book.At(photo));
        Assert.Equal($"The photo {photo} is not there.", Damage());
        live.Rescan();
        live.Steps.Line(SmallBook.JobId, "and on");
        Assert.Contains(live.Current.Problems, p => p.What == $"The photo {photo} is not there.");
    }

    [Fact]
    public void A_ledger_grows_by_a_bounded_amount_and_the_last_line_counts()
    {
        Verify();
        var folder = new BookFolder(Source, book.Clock);
        for (var n = 0; n < 1500; n++)
            folder.Ledger.Wrote(SmallBook.JobPath, System.Text.Encoding.UTF8.GetBytes($"{n}"));

        Assert.InRange(new FileInfo(book.At(".bench/ledger")).Length, 1, 300_000);
        Assert.Equal(4, Assert.Single(folder.Ledger.Read()).Value.Bytes);
    }

    private VerifyResult Verify(bool accept = false)
    {
        var result = Verifying.Verify(Source, book.Clock, accept);
        Assert.Null(result.Refused);
        return result;
    }

    private string Damage() => Assert.Single(Verify().Damage).What;
}
