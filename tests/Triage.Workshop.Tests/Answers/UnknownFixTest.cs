using Xunit;

namespace Triage.Workshop.Tests.Answers;

/// <summary>A job may name what no note here knows: its book was shared without the notes it was written with.</summary>
public sealed class UnknownFixTest
{
    [Fact]
    public async Task JobsOfABook_WhoseKnowledgeIsMostlyElsewhere_AreAllAnswered()
    {
        await using var bench = DemoBench.OpenSmall(classes: ["cassette-deck"]);
        var now = bench.Live.Current;

        var asked = now.Notes.Jobs.Where(j => now.ScopeOf(j) is not null).Select(now.AnswerFor).ToList();

        Assert.True(asked.Count > 40);
        Assert.All(asked, a => Assert.Null(a.Refused));
    }

    [Fact]
    public async Task MendByAFixThatNoNoteKnows_StillAsksForItsProof()
    {
        await using var bench = DemoBench.OpenSmall(classes: ["cassette-deck"]);
        var job = bench.Live.Current.Notes.Jobs.Single(j => j.Id == "2023-130");

        var next = bench.Live.Current.AnswerFor(job).Answer!.Next!;

        Assert.Equal("use-right-adapter", next.Id);
        Assert.Equal("still-works", next.Outcomes[0].Id);
    }
}
