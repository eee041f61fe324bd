using System.Globalization;
using Triage.Notes.Kinds;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Planning;
using Triage.Workshop.Answers.Wording;
using Triage.Workshop.Chances;
using Triage.Workshop.Jobs;
using Triage.Workshop.Knowledge;
using Triage.Workshop.Model;

namespace Triage.Workshop.Answers;

/// <summary>The planner's advice as one shows it. The choice itself is made in <see cref="NextStep"/>.</summary>
internal sealed class NextSteps(BenchKnowledge known, Job job, Reasoned reasoned, HardRules rules, WordsFor words)
{
    private const int OthersShown = 6, ToLearnShown = 4;

    /// <summary>Thought per answer, in planner nodes: some tens of milliseconds on a small machine.</summary>
    private static readonly PlannerBudget Budget = new(2_000_000);

    /// <summary>Expected costs closer than this, relatively, are no reason to prefer a step: they come from numbers that are not known better.</summary>
    private const double Alike = 0.005;

    /// <summary>How much more, relatively, the leading cause's own check or mend may cost before a look at something else comes first (chosen by trial).</summary>
    private const double Leads = 0.02;

    /// <summary>Outcome of a round in which nothing is out of order.</summary>
    private const string AllNormal = "all-normal";

    private readonly StepCards cards = new(known.Notes, reasoned.Network.Scope, reasoned.Actions);

    public NextBestStep Of(HypothesisSet hypotheses)
    {
        if (new ProtectFirst(job, reasoned).Step() is { } protect)
            return protect;
        if (new AfterItWorks(job, reasoned, words).Step() is { } step)
            return step;
        var problem = new ProblemFromJob(reasoned.Network, reasoned.Actions, rules, job, reasoned.Evidence, known.Settings, hypotheses).Of();
        var advice = NextStep.Choose(problem, Budget).PreferringTheLeadingCause(Leads).PreferringWhatTellsMore(Alike);
        // nobody gives a machine up unlooked, unless somebody has said what it is worth
        if (job.Worth is null && !job.Log.LookedAt())
            advice = advice.LookingFirst();
        var best = advice.Best;
        var card = cards.Of(best.Option.Id);
        var minutes = Math.Max(card.Minutes, known.Settings.HandlingMinutes) + best.Opens.Sum(step => reasoned.Network.Scope.Access.FirstOrDefault(a => a.Id == step)?.Minutes ?? 0);
        return new()
        {
            Id = card.Id,
            Kind = card.Kind,
            Name = card.Name,
            Cautions = card.Cautions,
            Steps = card.Steps,
            Opens = [.. best.Opens.Select(words.Step)],
            Tools = card.Tools,
            Price = best.PriceNow,
            Rows = [.. best.Rows.Select(Row)],
            WaitMinutes = card.WaitMinutes,
            Minutes = minutes,
            ExpectedCost = best.ExpectedCost,
            Outcomes = [.. best.Branches.Select(b => Ahead(best.Option, b))],
            Why = Why(minutes, best),
            TurnsAt = new(() => new TurningPointInWords(known, reasoned.Network, cards).Of(problem, advice)),
            Others = [.. advice.Ranked.Skip(1).Take(OthersShown).Select(Other)],
            ToLearnMore = [.. advice.Ranked.Where(r => r.Option is TestOption or RoundOption).OrderByDescending(r => r.InformationGain).Take(ToLearnShown).Select(Other)],
            Endings = [.. advice.Ranked.Where(r => r.Option is StopOption).Select(Other)],
            Forbidden = [.. advice.Blocked.Select(b => new ForbiddenStep(b.Option.Id, cards.Of(b.Option.Id).Kind, cards.Of(b.Option.Id).Name, WhyNot(b, problem)))],
            Part = card.Part,
        };
    }

    private string WhyNot(BlockedOption blocked, RepairProblem problem) =>
        blocked.Option.Blocked
        ?? (blocked.MeasureFirst is { } check ? $"Measure first: {cards.Of(check).Name}." : null)
        ?? $"Comes after: {string.Join(", ", blocked.Option.After.Where(id => !problem.Done.Contains(id)).Select(id => cards.Of(id).Name))}.";

    private OtherStep Other(RankedOption ranked)
    {
        var card = cards.Of(ranked.Option.Id);
        return new(card.Id, card.Kind, card.Name, ranked.PriceNow, ranked.ExpectedCost) { Cautions = card.Cautions, Steps = card.Steps };
    }

    private RoundLine Row(RoundRow row)
    {
        var finding = known.Notes.Find<Finding>(row.Finding.Id)!;
        return new(finding.Id, finding.Name, [.. finding.Values.Select(v => new NamedValue(v.Id, WordsFor.Value(finding, v.Id)))], row.Abnormal);
    }

    private OutcomeAhead Ahead(Option option, Branch branch) =>
        new(OutcomeId(option, branch), OutcomeName(option, branch), branch.Probability, branch.Then is null ? "the job is over" : $"then: {cards.Of(branch.Then).Name}");

    private static string OutcomeId(Option option, Branch branch) =>
        option is TestOption ? branch.Outcome : option is RoundOption ? branch.Finding is { } finding ? $"{finding}={branch.Outcome}" : AllNormal : branch.Outcome == "works" ? "works" : "no-change";

    private string OutcomeName(Option option, Branch branch)
    {
        if (option is RoundOption)
            return branch.Finding is { } seen ? words.Value(seen, branch.Outcome) : "all as it should be";
        if (option is not TestOption test || test.Id == AlwaysThere.AskConsent)
            return branch.Outcome;
        return known.Notes.Find<Test>(test.Id) is { Reveals: null } measured
            ? measured.Outcomes.FirstOrDefault(o => o.Id == branch.Outcome)?.Name ?? branch.Outcome
            : words.Value(test.Reveals.Id, branch.Outcome);
    }

    /// <summary>As one says it across the bench: how long it takes, and what the likeliest outcomes lead to.</summary>
    private string Why(double minutes, RankedOption best)
    {
        var ahead = best.Branches.Where(b => b.Then is not null).Take(2)
            .Select(b => $" {Sentence.Upper(OutcomeName(best.Option, b))}: {Sentence.Lower(cards.Of(b.Then!).Name)}.");
        return string.Create(CultureInfo.InvariantCulture, $"{minutes:0.#} min.{string.Concat(ahead)}");
    }
}
