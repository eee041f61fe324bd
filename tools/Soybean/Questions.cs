using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Learning;
using Triage.Reasoning.Networks;
using Triage.Reasoning.Planning;
using Triage.Workshop.Model;

namespace Triage.Tools.Soybean;

/// <summary>
/// Twenty questions: from three known attributes the planner chooses what to ask next, every question at the same price, until
/// one cause has 0.9. An attribute that was not observed costs a question and tells nothing.
/// </summary>
internal sealed class Questions
{
    private const double Sure = 0.9;

    /// <summary>What a name costs, and what giving up does, in questions: it pays to name what is two thirds likely. Chosen by trial.</summary>
    private const double Name = 20, GivingUp = 30;

    /// <summary>Of questions whose expected costs differ by less than this share, the one that tells most: one step ahead sees no finer.</summary>
    private const double Alike = 0.1;

    private static readonly PlannerBudget OneStep = new(1) { Exact = false };

    private readonly SoybeanCases cases;
    private readonly NamingCauses model;
    private readonly Dictionary<string, double> unanswered;
    private readonly Dictionary<string, Triage.Notes.Kinds.Finding> byName;
    private readonly Dictionary<string, ImmutableArray<string>> values;

    public Questions(SoybeanCases cases, ImmutableArray<Job> held)
    {
        this.cases = cases;
        var notes = held.Aggregate(cases.Bench.Notes, (book, job) => book.Without(job.Id));
        var counted = CountedJobs.Of(notes, _ => 1, new());
        model = new(counted.Learned, cases.Causes, [notes.Of<DeviceClass>().Single().Id]);
        values = notes.Of<Triage.Notes.Kinds.Finding>().ToDictionary(f => f.Id, f => f.Values.Select(v => v.Id).ToImmutableArray(), StringComparer.Ordinal);
        var past = notes.Of<Job>().Select(j => j.Log.OfType<Saw>().Select(s => s.Finding).ToHashSet(StringComparer.Ordinal)).ToList();
        unanswered = values.Keys.ToDictionary(id => id, id => (1.0 + past.Count(seen => !seen.Contains(id))) / (2 + past.Count), StringComparer.Ordinal);
        byName = notes.Of<Triage.Notes.Kinds.Finding>().ToDictionary(f => f.Name, StringComparer.Ordinal);
    }

    /// <param name="job">A held-out case.</param>
    /// <param name="start">Names of the attributes known at first.</param>
    public Questioned Ask(Job job, IEnumerable<string> start)
    {
        var observed = job.Log.OfType<Saw>().ToDictionary(s => s.Finding, s => s.Value, StringComparer.Ordinal);
        var seen = start.Select(name => byName[name].Id).Select(id => new CheckedFinding(id, observed[id])).ToList();
        var open = byName.Values.Select(f => f.Id).Except(seen.Select(s => s.Finding)).Order(StringComparer.Ordinal).ToList();
        var posterior = model.Posterior(seen);
        var asked = 0;
        for (; posterior.Max() < Sure && open.Count > 0; asked++)
        {
            var next = Next(posterior, seen, open);
            open.Remove(next);
            if (observed.TryGetValue(next, out var value))
            {
                seen.Add(new(next, value));
                posterior = model.Posterior(seen);
            }
        }

        return new(asked, cases.Causes[posterior.IndexOf(posterior.Max())] == job.Causes[0].Fault);
    }

    private string Next(ImmutableArray<double> posterior, List<CheckedFinding> seen, List<string> open)
    {
        var problem = new RepairProblem
        {
            Belief = [.. posterior.Select((p, c) => new Hypothesis(p, [new(c, 1)]))],
            Options =
            [
                new StopOption("stop", new(0, GivingUp)),
                .. cases.Causes.Select((cause, c) => new FixOption(cause, new(0, Name), [new(c, 1, 1)])),
                .. open.Select(id => new TestOption(id, new(0, 1), Reveals(id, model.Ask(seen, id, values[id]), unanswered[id]))),
            ],
            Rates = new(ValueOfHour: 0, CostOfDay: 0),
        };
        return NextStep.Choose(problem, OneStep).PreferringWhatTellsMore(Alike).Ranked.First(r => r.Option is TestOption).Option.Id;
    }

    /// <summary>P(value | cause, what is known), as the posterior after each answer implies it; no answer comes alike under every cause.</summary>
    private static Triage.Reasoning.Networks.Finding Reveals(string id, ImmutableArray<Foreseen> answers, double unanswered)
    {
        ImmutableArray<double> ambient = [1, .. answers.Select(_ => 0.0)];
        return new(id, [.. answers.Select(a => a.Value), "not known"], ambient, [.. answers[0].Posterior.Select((_, c) => new Link(c, 1, [.. Shares(answers, c).Select(p => p * (1 - unanswered)), unanswered]))]) { Nominal = true };
    }

    private static ImmutableArray<double> Shares(ImmutableArray<Foreseen> answers, int cause)
    {
        double[] joint = [.. answers.Select(a => a.Chance * a.Posterior[cause] + 1e-300)];
        return [.. joint.Select(p => p / joint.Sum())];
    }
}

/// <summary>How one case went.</summary>
internal sealed record Questioned(int Asked, bool Right);
