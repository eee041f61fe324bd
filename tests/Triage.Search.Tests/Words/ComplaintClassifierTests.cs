using Triage.Notes.Kinds;

namespace Triage.Search.Tests.Words;

public sealed class ComplaintClassifierTests
{
    [Fact]
    public void EnoughJobs_TeachWordsThatNoPhrasingHas()
    {
        var classifier = ComplaintClassifier.Train(Jobs(200, seed: 3), seed: 1)!;
        Assert.Equal(["display=blank", "sound=none"], classifier.Suggestable);
        var suggestion = Assert.Single(classifier.Suggest("window pitch dark, cannot see the patch name"));
        Assert.Equal(("display", "blank"), (suggestion.Finding, suggestion.Value));
        Assert.InRange(suggestion.Probability, 0.6, 1);
    }

    [Fact]
    public void TooFewJobs_TeachNothing()
    {
        Assert.Null(ComplaintClassifier.Train(Jobs(ComplaintClassifier.FewestJobs - 1, seed: 3), seed: 1));
        Assert.Null(ComplaintClassifier.Train(Jobs(200, seed: 3).Select(j => j with { Outcome = null }), seed: 1));
    }

    [Fact]
    public void RareValue_IsLeftOut()
    {
        var rare = Jobs(200, seed: 3).Select((j, i) => i < ComplaintClassifier.FewestOfEach - 1 ? j with { Log = j.Log.Add(new Saw(Shelf.Day(1), "hum", "yes")) } : j);
        Assert.DoesNotContain("hum=yes", ComplaintClassifier.Train(rare, seed: 1)!.Suggestable);
    }

    [Fact]
    public void SameJobsAndSeed_SuggestTheSame()
    {
        const string Complaint = "pitch dark and no music";
        var once = ComplaintClassifier.Train(Jobs(150, seed: 5), seed: 1)!.Suggest(Complaint);
        var again = ComplaintClassifier.Train(Jobs(150, seed: 5).Reverse(), seed: 1)!.Suggest(Complaint);
        Assert.Equal(once, again);
    }

    private static IEnumerable<Job> Jobs(int count, int seed)
    {
        string[] dark = ["window pitch dark", "cannot see the patch name", "little window stays dark, no patch name to see"];
        string[] mute = ["not a peep", "plays no music", "quiet as a mouse, no music"];
        string[] other = ["came with its case", "belongs to the school", "was in the loft", "wants it by Friday"];
        var random = new Random(seed);
        return Enumerable.Range(0, count).Select(i =>
        {
            var isDark = i % 2 == 0;
            var said = isDark ? dark : mute;
            return Shelf.Job(
                $"job-{i:000}", "job", null, $"{said[random.Next(said.Length)]}, {other[random.Next(other.Length)]}", 1, JobOutcome.Mended,
                isDark ? "display=blank" : "sound=none");
        }).ToList();
    }
}
