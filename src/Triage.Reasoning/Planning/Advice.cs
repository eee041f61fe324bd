using System.Collections.Immutable;

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
    Option Option, double ExpectedCost, double PriceNow, ImmutableArray<string> Opens, ImmutableArray<Branch> Branches, double InformationGain);

/// <summary>One outcome of an option.</summary>
/// <param name="Outcome">A value of the revealed finding, or "works" / "still faulty".</param>
/// <param name="Probability">Its chance now.</param>
/// <param name="CostAfter">Expected cost from there on.</param>
/// <param name="Then">Id of the option that would come next; null when the job is over.</param>
public sealed record Branch(string Outcome, double Probability, double CostAfter, string? Then);

/// <summary>An option that may not be done now.</summary>
public sealed record BlockedOption(Option Option, string Why);
