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
    /// The same advice with another step first where one is as good within a tolerance, costs less now and tells more: of such
    /// the one that tells most. Exact ties, as among checks that all have to be made before power, are otherwise in the given order.
    /// </summary>
    /// <param name="within">Expected costs closer than this, relatively, count as alike.</param>
    public Advice PreferringWhatTellsMore(double within)
    {
        var preferred = Ranked.Skip(1).Where(r => r.Option is not StopOption && r.ExpectedCost <= Best.ExpectedCost * (1 + within)
            && r.PriceNow <= Best.PriceNow && r.InformationGain > Best.InformationGain + 1e-9).MaxBy(r => r.InformationGain);
        return preferred is null ? this : this with { Ranked = Ranked.Remove(preferred).Insert(0, preferred) };
    }
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
}

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
