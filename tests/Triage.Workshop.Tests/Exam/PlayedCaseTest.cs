using Triage.Tools.Exam.Cases;
using Triage.Tools.Exam.Playing;
using Triage.Tools.Exam.Scoring;
using Xunit;

namespace Triage.Workshop.Tests.Exam;

/// <summary>A chime box with a shorted back-up capacitor, played through the product's own steps.</summary>
public sealed class PlayedCaseTest : IDisposable
{
    private readonly DirectoryInfo kb = Directory.CreateTempSubdirectory("exam-test-");

    public PlayedCaseTest()
    {
        var common = kb.CreateSubdirectory("common").FullName;
        foreach (var note in Directory.EnumerateFiles(Path.Combine(Repository.Root, "tests", "Triage.Cli.Tests", "small-book"), "*.md").Where(f => !Path.GetFileName(f).StartsWith("20", StringComparison.Ordinal)))
            File.Copy(note, Path.Combine(common, Path.GetFileName(note)));
    }

    [Fact]
    public async Task The_capacitor_is_found_replaced_and_proven()
    {
        var score = await Play("ohms-in-place", "flat-low");
        Assert.True(score.RightlyEnded, string.Join(", ", score.Course.Turns.Select(t => t.Id)));
        Assert.Equal("replace-backup-cap", score.Course.Turns[score.Course.MendedBy!.Value].Id);
        Assert.True(double.IsFinite(score.Minutes));
        Assert.Equal(1, score.Rank);
    }

    [Fact]
    public async Task A_reset_that_only_silences_the_fault_mends_nothing()
    {
        var bench = await Play("ohms-in-place", "flat-low");
        Assert.DoesNotContain(bench.Course.Turns.Take(bench.Course.MendedBy!.Value), t => t.Rows.Any(r => r.Outcome == "still works"));
    }

    [Fact]
    public async Task What_nobody_answered_cannot_be_told_where_the_normal_thing_would_be_a_lie()
    {
        var course = (await Play("nothing", "known")).Course;
        Assert.All(course.Turns.Where(t => t.Id is "ohms-in-place" or "clock-face"), t => Assert.Null(Assert.Single(t.Rows).Outcome));
    }

    private async Task<CaseScore> Play(string id, string value)
    {
        var exam = new ExamCase("silent-box", "chime box")
        {
            Complaint = "it is silent",
            Truth = [["backup-cap-shorted"]],
            RightEndings = [Ending.Mended],
            Answers = [new(id, value, KnownAnswer.Before)],
        };
        await using var bench = ExamBench.Open("empty", kb.FullName, null);
        return new(exam, "empty", bench.Play(new() { Machine = exam.Class, Complaint = exam.Complaint }, new KeyAnswers(exam, bench.Live.Current.Notes)));
    }

    public void Dispose() => kb.Delete(recursive: true);
}
