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

    [Fact]
    public async Task The_owner_is_asked_first_then_it_is_secured_then_one_looks()
    {
        SecureAndAsk();
        var turns = (await Play("ohms-in-place", "flat-low")).Course.Turns;
        Assert.Equal([TurnPart.Counter, TurnPart.Protect], turns.Take(2).Select(t => t.Part));
        Assert.Equal(["stood-for-years", "write-down-tunes"], turns.Take(2).Select(t => t.Id));
        Assert.DoesNotContain(turns.Skip(2), t => t.Part is TurnPart.Counter or TurnPart.Protect);
    }

    [Fact]
    public async Task Each_row_of_a_round_is_answered_and_none_is_asked_again()
    {
        SecureAndAsk();
        Change("fault-short.md", "money: 4", "money: 40");
        foreach (var better in new[] { "ohms.md", "reset.md" })
            File.Delete(Path.Combine(kb.FullName, "common", better));
        var turns = (await Play("lid-warm", "yes")).Course.Turns;
        var round = Assert.Single(turns, t => t.Id == "look-it-over");
        Assert.Equal(["clock-face: ", "lid-warm: the lid is warm"], round.Rows.Select(r => $"{r.Id}: {r.Outcome}").Order(StringComparer.Ordinal));
    }

    /// <summary>The same box, whose tunes can be lost, with a question for its owner and a look at two things at once.</summary>
    private void SecureAndAsk()
    {
        Change("machine.md", "stop-at-once:", """
            counter: [stood-for-years]
            protect:
              - protect: write-down-tunes
                name: Write the tunes down
                steps: ["Play each and write it down."]
                minutes: 5
                loses: stored tunes
            stop-at-once:
            """);
        Change("fault-short.md", "mends:", "  - {finding: lid-warm, chance: almost always}\nmends:");
        Change("fault-settings.md", "value: blank, chance: often", "value: blank, chance: rarely");
        Change("fault-settings.md", "shows:", "shows:\n  - {finding: stood-for-years, chance: often}");
        Add("lid-warm.md", "kind: finding\nid: lid-warm\nname: Warm lid\nask: Is the lid warm?\nseen: the lid is warm\nnot-seen: the lid is cool\nanyway: rarely");
        Add("stood-for-years.md", "kind: finding\nid: stood-for-years\nname: Stood for years\nask: Did it stand for years?\nanyway: seldom");
        Add("look-it-over.md", "kind: test\nid: look-it-over\nname: Look it over\nway: look\nreveals: [clock-face, lid-warm]\nminutes: 1");
    }

    private void Change(string note, string from, string to)
    {
        var path = Path.Combine(kb.FullName, "common", note);
        File.WriteAllText(path, File.ReadAllText(path).Replace("format: 1", "format: 2", StringComparison.Ordinal).Replace(from, to, StringComparison.Ordinal));
    }

    private void Add(string note, string fields) => File.WriteAllText(Path.Combine(kb.FullName, "common", note), $"---\nformat: 2\n{fields}\n---\n");

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
