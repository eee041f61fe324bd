using System.Collections.Immutable;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Networks;
using Triage.Reasoning.Planning;

namespace Triage.Reasoning.Tests.Planning;

/// <summary>Short words for small problems: fault n is state 1 of root n, a minute costs 1.</summary>
internal static class Bench
{
    public static RepairProblem Problem(ImmutableArray<Hypothesis> belief, params Option[] options) => new()
    {
        Belief = belief,
        Options = [.. options],
        Rates = new Rates(ValueOfHour: 60, CostOfDay: 10),
    };

    /// <summary>Exactly one fault, fault n with the n-th probability.</summary>
    public static ImmutableArray<Hypothesis> Single(params double[] probabilities) => [.. probabilities.Select((p, n) => Faults(p, n))];

    public static Hypothesis Faults(double probability, params int[] faults) => new(probability, [.. faults.Select(n => new FaultyRoot(n, 1))]);

    public static StopOption Stop(double price, string id = "stop") => new(id, new Expense(0, price));

    public static FixOption Fix(string id, double price, params int[] clears) => Fix(id, price, [.. clears.Select(n => (n, 1.0))]);

    public static FixOption Fix(string id, double price, params (int Fault, double Works)[] clears) =>
        new(id, new Expense(0, price), [.. clears.Select(c => new Clearing(c.Fault, 1, c.Works))]);

    /// <summary>A question answered yes with a chance for each fault, never without any of them.</summary>
    public static TestOption Test(string id, double price, params (int Fault, double Yes)[] shows) => new(
        id, new Expense(0, price),
        new Finding(id, ["no", "yes"], [1, 0], [.. shows.Select(s => new Link(s.Fault, 1, [1 - s.Yes, s.Yes]))]));
}
