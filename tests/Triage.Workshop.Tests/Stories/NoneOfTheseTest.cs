using Triage.Notes.Kinds;
using Triage.Workshop.Model;
using Xunit;

namespace Triage.Workshop.Tests.Stories;

/// <summary>What is seen fits no listed cause: the answer says so, and what is found becomes a listed one.</summary>
public sealed class NoneOfTheseTest(SharedDemo shared)
{
    private const string Complaint = "hisses and hums, a note hangs, smells burnt";

    [Fact]
    public void The_unlisted_fault_leads_and_the_answer_says_what_to_look_at()
    {
        var answer = shared.Bench.Live.Steps.Ask("Corvane K-61", Complaint).Answer!;
        Assert.Equal(SpecialFaults.Unlisted, answer.Causes[0].Fault);
        Assert.Contains(answer.Remarks, r => r.StartsWith("No listed cause explains this well", StringComparison.Ordinal));
        Assert.Contains(answer.Remarks, r => r.StartsWith("To learn more: ", StringComparison.Ordinal));
        Assert.NotEmpty(answer.Next!.ToLearnMore);
    }

    [Fact]
    public async Task Closed_in_free_words_it_becomes_a_listed_cause_that_the_next_complaint_ranks()
    {
        await using var bench = DemoBench.Open();
        var steps = bench.Live.Steps;
        var id = steps.TakeIn(new() { Machine = "Pellwick S-40", Complaint = Complaint }).Job!.Id;
        var closed = steps.Close(id, new() { Outcome = JobOutcome.Mended, NewCause = "Screw loose across the sound board", NewCauseGrade = Grade.Measured });
        Assert.Null(closed.Refused);
        Assert.True(Assert.Single(closed.Job!.Causes).WasNew);
        var again = steps.Ask("Corvane K-49", Complaint).Answer!;
        var listed = again.Causes.Select(c => c.Name).ToList();
        Assert.InRange(listed.IndexOf("Screw loose across the sound board"), 0, 2);
        Assert.Equal(closed.Taught.Single(t => t.Device == "corvane-k49").After, again.Cause("screw-loose-across-the-sound-board")!.Probability, 1e-9);
        Assert.DoesNotContain(bench.Live.Current.Problems, p => p.Path.Contains("screw-loose", StringComparison.Ordinal));
    }
}
