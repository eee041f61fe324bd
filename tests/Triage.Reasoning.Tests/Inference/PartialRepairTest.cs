using System.Collections.Immutable;
using FsCheck.Xunit;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Networks;
using Xunit;

namespace Triage.Reasoning.Tests.Inference;

/// <summary>
/// Two independent faults entered as one root of four states (none, a, b, both) must answer as two roots do, whatever is mended
/// in whichever order: brute force over the two roots is the reference.
/// </summary>
public sealed class PartialRepairTest
{
    private static readonly string[] Actions = ["mend a", "mend b", "reset a"];

    [Property(MaxTest = 200, StartSize = 1000, EndSize = 1000000)]
    public void Tied_root_mended_in_part_answers_as_two_roots(int seed)
    {
        var random = new Random(seed);
        double[] prior = [0.05 + 0.4 * random.NextDouble(), 0.05 + 0.4 * random.NextDouble()];
        var shows = Enumerable.Range(0, 3).Select(_ => new[] { random.NextDouble(), random.NextDouble() }).ToArray();
        var chances = Actions.Select(_ => (Works: 0.2 + 0.8 * random.NextDouble(), Holds: random.Next(2) == 0 ? 1 : random.NextDouble())).ToArray();
        var log = Enumerable.Range(0, random.Next(1, 4)).Select(_ => (Action: random.Next(3), Outcome: (ActionOutcome)random.Next(3), Held: random.Next(4))).ToArray();
        ImmutableArray<Observation> seen = [.. Enumerable.Range(0, 3).Select(f => new Observation(f, random.Next(2), random.Next(log.Length + 1)))];
        var apart = Evidence(log, seen, action => Apart(action, chances[action]));
        var tied = Evidence(log, seen, action => Tied(action, chances[action]));
        var reference = BruteForce.Of(Apart(prior, shows), apart);
        var answer = PosteriorInference.Of(Tied(prior, shows), tied);
        if (reference.Joint < 1e-12)
        {
            return;
        }

        Assert.Equal(reference.Evidence, Math.Exp(answer.LogEvidence), 1e-11);
        Assert.Equal(reference.AtStart[0][1] / reference.Joint, answer.Marginals[0][1] + answer.Marginals[0][3], 1e-11);
        Assert.Equal(reference.Now[0][1] / reference.Joint, answer.Remaining[0][1] + answer.Remaining[0][3], 1e-11);
        Assert.Equal(reference.Now[1][1] / reference.Joint, answer.Remaining[0][2] + answer.Remaining[0][3], 1e-11);
        var both = Hypotheses.Of(Tied(prior, shows), tied).Listed.Where(h => h.Faulty is [{ State: 3 }]).Sum(h => h.Probability);
        Assert.Equal(reference.Hypotheses.GetValueOrDefault("0:1 1:1") / reference.Joint, both, 1e-9);
    }

    private static Evidence Evidence((int Action, ActionOutcome Outcome, int Held)[] log, ImmutableArray<Observation> seen, Func<int, ImmutableArray<Clearing>> clears) => new()
    {
        Observations = seen,
        Actions = [.. log.Select(l => new ActionTaken(Actions[l.Action], clears(l.Action), l.Outcome)
        {
            Held = l.Outcome == ActionOutcome.Works && l.Held < 2 ? l.Held == 0 : null,
        })],
    };

    private static ImmutableArray<Clearing> Apart(int action, (double Works, double Holds) chance) => [new(action % 2, 1, chance.Works, chance.Holds)];

    private static ImmutableArray<Clearing> Tied(int action, (double Works, double Holds) chance)
    {
        var (own, other) = action % 2 == 0 ? (1, 2) : (2, 1);
        return [new(0, own, chance.Works, chance.Holds), new(0, 3, chance.Works, chance.Holds, Leaves: other)];
    }

    private static Network Apart(double[] prior, double[][] shows) => new(
        [.. prior.Select((p, r) => new Root($"r{r}", [new("good", []), new("bad", [$"{r}"])], [1 - p, p]))],
        [.. shows.Select((s, f) => new Finding($"f{f}", ["no", "yes"], [.95, .05], [new(0, 1, [1 - s[0], s[0]]), new(1, 1, [1 - s[1], s[1]])]))])
        { SomethingIsWrong = true };

    private static Network Tied(double[] prior, double[][] shows) => new(
        [new Root("r", [new("good", []), new("a", ["0"]), new("b", ["1"]), new("both", ["0", "1"])],
            [(1 - prior[0]) * (1 - prior[1]), prior[0] * (1 - prior[1]), (1 - prior[0]) * prior[1], prior[0] * prior[1]])],
        [.. shows.Select((s, f) => new Finding($"f{f}", ["no", "yes"], [.95, .05],
            [new(0, 1, [1 - s[0], s[0]]), new(0, 2, [1 - s[1], s[1]]), new(0, 3, [(1 - s[0]) * (1 - s[1]), 1 - (1 - s[0]) * (1 - s[1])])]))])
        { SomethingIsWrong = true };
}
