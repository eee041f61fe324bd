using Triage.Notes.Kinds;
using Triage.Reasoning.Inference;
using Triage.Workshop.Answers;
using Triage.Workshop.Answers.Wording;
using Triage.Workshop.Chances;
using Triage.Workshop.Model;
using Xunit;

namespace Triage.Workshop.Tests.Answers;

/// <summary>How firmly the first place stands, in a repairer's words.</summary>
public sealed class FirstPlaceTest(SharedDemo shared)
{
    private readonly DemoBench bench = shared.Bench;

    private const string Shorted = "backup-capacitor-shorted", Low = "backup-capacitor-low";

    [Fact]
    public void A_link_is_told_by_how_often_the_cause_shows_the_finding()
    {
        var reasoned = Reason(bench);
        var (root, state) = reasoned.Network.Faults[Shorted][0];
        var finding = reasoned.Network.Network.Findings.IndexOf(
            reasoned.Network.Network.Findings.First(f => f.Values.Length == 2 && !f.Id.StartsWith(DeviceNetwork.MeasurementPrefix, StringComparison.Ordinal) && f.Links.Any(l => l.Root == root && l.State == state)));
        var shown = Words(bench).Value(reasoned.Network.Network.Findings[finding].Id, reasoned.Network.Network.Findings[finding].Values[1]);
        var swing = new Swing(SwingKind.Link, root, state, finding, 1) { Chance = 0.8, At = 0.6, Interval = new(0.55, 0.92), First = Shorted, Instead = Low };

        Assert.Equal(
            $"First place would go to “{Name(bench, Low)}” if “{Name(bench, Shorted)}” showed “{shown}” less often than 60 % (taken as 80 %, could be 55–92 %).",
            Say(bench, reasoned, swing));
        Assert.Equal(
            $"First place would go to “{Name(bench, Low)}” if “{shown}” came without any listed cause more often than 3 % (taken as 1.2 %, could be 0.4–4 %).",
            Say(bench, reasoned, swing with { Kind = SwingKind.Ambient, Root = -1, State = 0, Chance = 0.012, At = 0.03, Interval = new(0.004, 0.04) }));
    }

    [Fact]
    public void A_prior_is_told_by_its_ratio()
    {
        var reasoned = Reason(bench);
        var (root, state) = reasoned.Network.Faults[Low][0];
        var swing = new Swing(SwingKind.Prior, root, state, -1, 0) { Chance = 0.002, At = 0.003, Interval = new(0.001, 0.005), First = Shorted, Instead = Low };

        Assert.Equal(
            $"First place would go to “{Name(bench, Low)}” if it were more than 1.5 times as common as taken here (up to 2.5 times is plausible).",
            Say(bench, reasoned, swing));
    }

    [Fact]
    public void Every_answer_that_the_network_decides_says_it()
    {
        var answer = bench.Live.Current.AnswerFor(Job(bench)).Answer!;
        Assert.Matches("^(First place would go to “.+” if .+|No single number, moved within its interval, changes the first place)\\.$", answer.FirstPlace);
        Assert.DoesNotContain($"First place would go to “{answer.Causes[0].Name}”", answer.FirstPlace, StringComparison.Ordinal);
    }

    private static Job Job(DemoBench bench) =>
        bench.Live.Steps.TakeIn(new() { Machine = "Corvane K-61", Complaint = "nothing on the display, no sound" }).Job!;

    private static Reasoned Reason(DemoBench bench)
    {
        var job = Job(bench);
        var answering = new Answering(bench.Live.Current.Knows);
        return answering.Reason(job, bench.Live.Current.Knows.ScopeOf(job)!, bench.Live.Current.Learned);
    }

    private static WordsFor Words(DemoBench bench) => new(bench.Live.Current.Notes, []);

    private static string Name(DemoBench bench, string fault) => WordsFor.CauseName(fault, bench.Live.Current.Notes);

    private static string Say(DemoBench bench, Reasoned reasoned, Swing swing) => new FirstPlaceInWords(reasoned.Network, bench.Live.Current.Notes, Words(bench)).Say(swing);
}
