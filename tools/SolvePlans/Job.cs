using System.Collections.Immutable;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Networks;
using Triage.Reasoning.Planning;

namespace Triage.SolvePlans;

/// <summary>One instance as the planner sees it: each fault is a root with one mode, each test a finding without order.</summary>
internal sealed class Job(Instance instance)
{
    public const string Stop = "stop";

    private readonly ImmutableArray<Option> _options =
    [
        new StopOption(Stop, Money(instance.StopCost)),
        .. instance.Fixes.Select(f => new FixOption(f.Id, Money(f.Cost), Clears(instance, f)) { Access = f.Access }),
        .. instance.Tests.Select(t => new TestOption(t.Id, Money(t.Cost), Reveals(instance, t)) { Access = t.Access }),
    ];

    /// <summary>Value of an hour 60: a minute costs 1, so that opening costs are minutes.</summary>
    private readonly AccessTree _access = new([.. (instance.Access ?? []).Select(s => new AccessStep(s.Id, s.Cost, s.Parent))]);

    public double[] Prior { get; } = [.. instance.Faults.Select(f => f.P)];

    public RepairProblem After(IReadOnlyCollection<string> done, double[] weights)
    {
        var total = weights.Sum();
        return new RepairProblem
        {
            Belief = [.. weights.Select((w, i) => new Hypothesis(w / total, [new FaultyRoot(i, 1)])).Where(h => h.Probability > 0)],
            Options = _options,
            Access = _access,
            Open = [.. _options.Where(o => done.Contains(o.Id)).SelectMany(o => _access.PathTo(o.Access)).Select(s => s.Id).Distinct()],
            Done = [.. done],
            Rates = new Rates(ValueOfHour: 60, CostOfDay: 0),
        };
    }

    /// <summary>P(the job goes on with this sign | each fault).</summary>
    public double[] Likelihood(string action, char sign)
    {
        var fix = instance.Fixes.FirstOrDefault(f => f.Id == action);
        var test = instance.Tests.FirstOrDefault(t => t.Id == action);
        return [.. instance.Faults.Select(f => fix is not null ? 1 - fix.Repairs.GetValueOrDefault(f.Id)
            : sign == '+' ? test!.PPositive[f.Id] : 1 - test!.PPositive[f.Id])];
    }

    /// <summary>The signs with which the job goes on after an action.</summary>
    public string Signs(string action) => Array.Exists(instance.Fixes, f => f.Id == action) ? "-" : "+-";

    private static Expense Money(double cost) => new(Minutes: 0, Money: cost);

    private static ImmutableArray<Clearing> Clears(Instance instance, Fix fix) =>
        [.. instance.Faults.Index().Where(f => fix.Repairs.GetValueOrDefault(f.Item.Id) > 0).Select(f => new Clearing(f.Index, 1, fix.Repairs[f.Item.Id]))];

    private static Finding Reveals(Instance instance, Test test) => new(
        test.Id, ["-", "+"], [1, 0],
        [.. instance.Faults.Select((f, i) => new Link(i, 1, [1 - test.PPositive[f.Id], test.PPositive[f.Id]]))])
    { Nominal = true };
}
