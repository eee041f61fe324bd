using Triage.Reasoning.Learning;
using Triage.Workshop.Model;
using Xunit;

namespace Triage.Workshop.Tests.Translating;

/// <summary>What was fitted once is not fitted again to the same notes and closed jobs, and never taken for that of others.</summary>
public sealed class RememberedFitsTest : IDisposable
{
    private static readonly Fit Some = new(new() { ShareNotes = 1.0 / 3, LinkLevels = [2, double.PositiveInfinity] }, new(["hum"], 4, double.PositiveInfinity));

    private readonly string folder = Directory.CreateTempSubdirectory("fits-").FullName;

    [Fact]
    public void What_was_kept_is_found_to_the_last_digit_and_a_damaged_file_is_no_fit()
    {
        var fits = new RememberedFits(folder);
        fits.Keep(7, Some);

        var found = fits.Find(7)!;
        Assert.Equal((Some.Pooling.ShareNotes, Some.Dependence.Kappa, Some.Dependence.Reach), (found.Pooling.ShareNotes, found.Dependence.Kappa, found.Dependence.Reach));
        Assert.Equal(Some.Pooling.LinkLevels, found.Pooling.LinkLevels.AsEnumerable());
        Assert.Equal(Some.Dependence.Parents, found.Dependence.Parents.AsEnumerable());
        Assert.Null(fits.Find(8));

        foreach (var file in Directory.GetFiles(folder))
            File.WriteAllText(file, File.ReadAllText(file)[..20]);
        Assert.Null(fits.Find(7));
    }

    [Fact]
    public async Task Open_jobs_change_no_fit_and_a_changed_note_has_its_own()
    {
        await using var bench = DemoBench.OpenSmall(classes: ["electronic-keyboard", "radio-set"]);
        var first = await Fitted(bench);
        bench.Live.Steps.TakeIn(new() { Machine = "Pellwick S-40", Complaint = "no sound" });
        var again = await Fitted(bench);
        Assert.Single(Directory.GetFiles(folder));
        Assert.Equal(first.Pooling.LinkLevels, again.Pooling.LinkLevels.AsEnumerable());
        Assert.Equal((first.Pooling.ShareNotes, first.Pooling.LinkNotes), (again.Pooling.ShareNotes, again.Pooling.LinkNotes));

        File.AppendAllText(Path.Combine(bench.Folder, "common", "classes", "radio-set.md"), "\nA line more.\n");
        await Fitted(bench);
        Assert.Equal(2, Directory.GetFiles(folder).Length);
    }

    private async Task<Epoch> Fitted(DemoBench bench)
    {
        await using var live = LiveBench.Open(new() { Books = bench.Books, Fits = new(folder), Watch = false });
        return live.Current.Learned.Epoch;
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);
}
