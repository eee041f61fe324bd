using System.Text;
using Triage.Notes.Kinds;
using Triage.Notes.Parsing;
using Triage.Notes.Writing;
using Xunit;

namespace Triage.Workshop.Tests.Store;

/// <summary>Jobs closed, reopened, changed and deleted one by one teach what learning from nothing teaches.</summary>
public sealed class MovedAlongTests
{
    /// <summary>Of edits, each made once before the bench is compared with a fresh one.</summary>
    private const int Kinds = 6;

    [Fact]
    public Task RandomEdits_TeachWhatAFreshOpenLearns() => TeachTheSame(seed: 1);

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [Trait("run", "thorough")]
    public Task MoreRandomEdits_TeachWhatAFreshOpenLearns(int seed) => TeachTheSame(seed);

    private static async Task TeachTheSame(int seed)
    {
        await using var bench = DemoBench.OpenSmall(classes: ["electronic-keyboard"]);
        var random = new Random(seed);
        for (var round = 0; round < 2; round++)
        {
            int[] kinds = [.. Enumerable.Range(0, Kinds)];
            random.Shuffle(kinds);
            foreach (var kind in kinds)
                EditOne(bench, random, kind);
            await using var fresh = LiveBench.Open(new() { Books = bench.Books, Clock = bench.Clock, Watch = false });
            BenchComparison.Same(fresh.Current, bench.Live.Current);
        }
    }

    private static void EditOne(DemoBench bench, Random random, int kind)
    {
        var live = bench.Live;
        var jobs = live.Current.Notes.Jobs.OrderBy(j => j.Id, StringComparer.Ordinal).ToList();
        var job = jobs[random.Next(jobs.Count)];
        var faults = live.Current.Notes.Of<Fault>().ToList();
        var fault = faults[random.Next(faults.Count)].Id;
        switch (kind)
        {
            case 0:
                File.Delete(FileOf(bench, job));
                break;
            case 1:
                Edit(bench, job, text => text.Remove(["outcome"]).Remove(["closed"]));
                break;
            case 2:
                Edit(bench, job, text => Closed(text, fault, random));
                break;
            case 3:
                Edit(bench, job, text => Closed(text, fault, random).SetBody(job.Body + "\nclosed anew\n"));
                break;
            case 4:
                Assert.Null(live.Steps.TakeIn(new() { Machine = "Pellwick S-40", Complaint = "no sound, nothing on the display" }).Refused);
                return;
            default:
                Edit(bench, job, text => text.Set(["name"], YamlValue.Of("another name")));
                break;
        }

        live.OnDisk.Reread(live.OnDisk.Home!, [job.Place.Path], patient: false);
    }

    private static NoteText Closed(NoteText text, string fault, Random random) => text
        .Set(["causes"], new YamlList([new YamlFields([("fault", YamlValue.Of(fault)), ("grade", YamlValue.Of(random.Next(2) == 0 ? "measured" : "told"))])]))
        .Set(["outcome"], YamlValue.Of("mended"))
        .Set(["closed"], YamlValue.Of(new DateTimeOffset(2020 + random.Next(8), 1 + random.Next(12), 3, 9, 0, 0, TimeSpan.Zero)));

    private static void Edit(DemoBench bench, Job job, Func<NoteText, NoteText> edit)
    {
        var file = FileOf(bench, job);
        File.WriteAllBytes(file, edit(NoteReader.Read("demo", job.Place.Path, File.ReadAllBytes(file)).Text).Bytes.ToArray());
    }

    private static string FileOf(DemoBench bench, Job job) => Path.Combine(bench.Folder, "demo", job.Place.Path);
}
