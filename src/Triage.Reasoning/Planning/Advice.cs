using System.Collections.Immutable;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Planning;

/// <summary>The next best step, and how every other option compares.</summary>
/// <param name="Ranked">Allowed options, least expected cost first; never empty because stopping is always among them.</param>
/// <param name="Blocked">Options that a hard rule or an undone earlier option forbids now, with the reason in words.</param>
/// <param name="NodesUsed">Work done, in nodes: deterministic.</param>
public sealed record Advice(ImmutableArray<RankedOption> Ranked, ImmutableArray<BlockedOption> Blocked, int NodesUsed)
{
    public RankedOption Best => Ranked[0];

    /// <summary>
    /// The same advice with another step first where one is as good within a tolerance: what meets the leading cause; else what comes next
    /// whatever the look advised shows; else what costs less now and tells more, the one that tells most. Exact ties, as among
    /// checks that all have to be made before power, are otherwise in the given order.
    /// </summary>
    /// <param name="within">Expected costs closer than this, relatively, count as alike.</param>
    public Advice PreferringWhatTellsMore(double within)
    {
        var settled = PreferringTheLeadingCause(within).WithActionsFirst(within);
        return settled.Best.OnLeadingCause || settled.Best != Best ? settled
            : WithFirst(Ranked.Skip(1).Where(r => r.Option is not StopOption && IsAlike(r, within)
                && r.PriceNow <= Best.PriceNow && r.InformationGain > Best.InformationGain + 1e-9 && r.ThenAnyway is null).MaxBy(r => r.InformationGain));
    }

    /// <summary>
    /// The same advice with the leading cause's own check or mend first where that is as good within a tolerance and the
    /// step advised is a look at something else: a cause that stands out is not put off from one small look to the next.
    /// </summary>
    /// <param name="within">Expected costs closer than this, relatively, count as alike.</param>
    public Advice PreferringTheLeadingCause(double within) =>
        Best.OnLeadingCause || !Best.IsLook ? this : WithFirst(Ranked.FirstOrDefault(r => r.OnLeadingCause && IsAlike(r, within)));

    /// <summary>The same advice with a look first where it would be to stop: the leading cause's own, else the one that tells most for its price.</summary>
    public Advice LookingFirst() =>
        Best.Option is not StopOption ? this
        : WithFirst(Ranked.Where(r => r.IsLook && r.InformationGain > 0).OrderByDescending(r => r.OnLeadingCause).ThenByDescending(r => r.InformationGain / Math.Max(r.PriceNow, LeastPrice)).FirstOrDefault());

    /// <summary>No look is taken for cheaper than this, in money: a third of it would not tell three times as much.</summary>
    private const double LeastPrice = 0.5;

    /// <summary>What comes anyway before the look advised, where that costs no more.</summary>
    private Advice WithActionsFirst(double within) =>
        WithFirst(Best.ThenAnyway is { } then ? Ranked.FirstOrDefault(r => r.Option.Id == then.Option && (then.CostsNoMoreFirst || IsAlike(r, within))) : null);

    private bool IsAlike(RankedOption option, double within) => option.ExpectedCost <= Best.ExpectedCost * (1 + within);

    private Advice WithFirst(RankedOption? first) => first is null || first == Best ? this : this with { Ranked = Ranked.Remove(first).Insert(0, first) };
}

/// <summary>An option with what follows from taking it.</summary>
/// <param name="Option">What to do.</param>
/// <param name="ExpectedCost">Expected cost to a working machine or to a stop when it is done next, in the bench's currency.</param>
/// <param name="PriceNow">Its own price now, opening included.</param>
/// <param name="Opens">Access steps it opens on the way.</param>
/// <param name="Branches">What can come of it, likeliest first.</param>
/// <param name="InformationGain">Expected drop of entropy over the hypotheses, in bits: shown, never the criterion.</param>
public sealed record RankedOption(
    Option Option, double ExpectedCost, double PriceNow, ImmutableArray<string> Opens, ImmutableArray<Branch> Branches, double InformationGain)
{
    /// <summary>Of a round: what each finding tells by itself that is not known yet, in the order in which one looks. Empty for everything else.</summary>
    public ImmutableArray<RoundRow> Rows { get; init; } = [];

    /// <summary>Mends the cause that is likelier than not, or could refute it.</summary>
    public bool OnLeadingCause { get; init; }

    /// <summary>What is done after a small look whatever it shows; null where that depends on it, and for what is no look near the best.</summary>
    public Anyway? ThenAnyway { get; init; }

    internal bool IsLook => Option is TestOption or RoundOption;
}

/// <summary>What is done whatever a look, and small looks after it, show: a fix, a stop, or the leading cause's own check.</summary>
/// <param name="Option">Its id; it may be done now.</param>
/// <param name="CostsNoMoreFirst">
/// Sure to cost no more when it is done before the look, however the figures stand: looks commute with looks, and with fixes where there
/// is one fault. With several faults a look before a fix can pay after it.
/// </param>
public sealed record Anyway(string Option, bool CostsNoMoreFirst);

/// <summary>One finding of a round by itself.</summary>
/// <param name="Finding">What one looks at.</param>
/// <param name="Abnormal">P(any value but the first) now.</param>
/// <param name="InformationGain">Expected drop of entropy over the hypotheses, in bits; 0 where it can change nothing, whatever else is seen.</param>
public sealed record RoundRow(Finding Finding, double Abnormal, double InformationGain);

/// <summary>One outcome of an option.</summary>
/// <param name="Outcome">A value of a revealed finding, "all normal" for a round, or "works" / "still faulty".</param>
/// <param name="Probability">Its chance now.</param>
/// <param name="CostAfter">Expected cost from there on.</param>
/// <param name="Then">Id of the option that would come next; null when the job is over.</param>
public sealed record Branch(string Outcome, double Probability, double CostAfter, string? Then)
{
    /// <summary>Id of the finding that has this value, in a round the most telling of those that are out of order; null for a fix and where all is normal.</summary>
    public string? Finding { get; init; }
}

/// <summary>An option that may not be done now.</summary>
public sealed record BlockedOption(Option Option, string Why)
{
    /// <summary>Id of the check that it waits for, where that is why; null otherwise.</summary>
    public string? MeasureFirst { get; init; }
}
