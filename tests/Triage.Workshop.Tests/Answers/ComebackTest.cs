using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Xunit;

namespace Triage.Workshop.Tests.Answers;

/// <summary>
/// A mend that seemed to work and did not last: likely the same fault, possibly chance, and never the end of advice (common practice, no source).
/// </summary>
public sealed class ComebackTest(SharedDemo shared)
{
    private const string Cleaned = "clean-headphone-contact", Contact = "headphone-contact-stuck";

    private static readonly DateTimeOffset Morning = new(2026, 3, 2, 9, 0, 0, TimeSpan.Zero);

    private readonly Bench bench = shared.Bench.Live.Current;

    [Fact]
    public void A_mend_that_came_back_makes_its_fault_likelier_and_rules_nothing_out()
    {
        var before = Answer(Silent);
        var after = Answer(Silent, new Fixed(Morning.AddHours(1), Cleaned, Effect.Works), new Held(Morning.AddHours(2), Cleaned, false, "soak"));

        var (then, now) = (Chance(before, Contact), Chance(after, Contact));
        // odds by the ratio of one in thirty to one in a hundred
        Assert.Equal(then / (1 - then) * (100.0 / 30), now / (1 - now), 0.05);
        Assert.All(before.Causes.Where(c => c.Probability > 0.02), c => Assert.True(Chance(after, c.Fault) > 0, c.Fault));
        Assert.NotNull(after.Next);
        Assert.NotEqual(Cleaned, after.Next.Id);
        Assert.DoesNotContain(after.Remarks, r => r.StartsWith("These cannot all be true", StringComparison.Ordinal));
    }

    [Fact]
    public void A_sign_seen_again_after_a_mend_takes_back_that_it_works()
    {
        var mended = new Fixed(Morning.AddHours(1), Cleaned, Effect.Works);
        var proving = Answer(Silent, mended);
        var again = Answer(Silent, mended, new Saw(Morning.AddHours(2), "sound", "none"));

        Assert.Equal("still-works", proving.Next!.Outcomes[0].Id);
        Assert.DoesNotContain("still-works", again.Next!.Outcomes.Select(o => o.Id));
        // what then makes it work is proven like any other, though no note knows it
        var mendedAtLast = Answer(Silent, mended, new Saw(Morning.AddHours(2), "sound", "none"), new Fixed(Morning.AddHours(3), "known-to-nobody", Effect.Works));
        Assert.Equal("still-works", mendedAtLast.Next!.Outcomes[0].Id);
        // the contact was cleaned, and it is still silent: something else is likelier than it was
        Assert.True(Chance(again, Contact) < Chance(Answer(Silent), Contact));
    }

    private static Saw Silent { get; } = new(Morning, "sound", "none");

    private static double Chance(Triage.Workshop.Answers.Answer answer, string fault) => answer.Causes.FirstOrDefault(c => c.Fault == fault)?.Probability ?? 0;

    private Triage.Workshop.Answers.Answer Answer(params ImmutableArray<LogEntry> log) =>
        bench.AnswerFor(new Job("x", "x") { Class = "cassette-deck", Log = log }).Answer!;
}
