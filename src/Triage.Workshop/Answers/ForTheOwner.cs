using System.Collections.Immutable;
using System.Globalization;
using Triage.Notes.Kinds;
using Triage.Workshop.Answers.Wording;
using Triage.Workshop.Chances;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Answers;

/// <summary>
/// One sentence that can be read out at the counter: what it may be, what it may cost, the chance that it will work again, and when one
/// will know more.
/// </summary>
internal sealed class ForTheOwner(Reasoned reasoned, BenchSettings settings)
{
    /// <summary>Causes that are named, and how likely one has to be for that.</summary>
    private const int Named = 2;
    private const double WorthNaming = 0.15;

    /// <summary>Ends of a price range between which the bill lies in eight cases of ten.</summary>
    private const double Low = 0.1, High = 0.9;

    public string Say(ImmutableArray<RankedCause> causes, NextBestStep? next)
    {
        var bills = Bills().OrderBy(b => b.Price).ToList();
        var mended = bills.Sum(b => b.Chance);
        return string.Join(" ", new[] { MayBe(causes), MayCost(bills, mended), Works(mended), KnowMore(next) }.OfType<string>());
    }

    private static string MayBe(ImmutableArray<RankedCause> causes)
    {
        var named = causes.Where(c => !c.IsUnlisted && c.Probability >= WorthNaming).Take(Named).Select(c => Sentence.Lower(c.Name)).ToList();
        return named switch
        {
            [] => "We cannot say yet what it is.",
            [var one] when causes[0].Probability > 0.8 => $"Most likely: {one}.",
            [var one] => $"It may be this: {one}. Other things are possible.",
            [var one, .. var others] => $"It may be one of these: {one}, or {others[0]}.",
        };
    }

    /// <summary>For each cause that can be mended: its chance, and the cheapest mend that is likely to do it.</summary>
    private IEnumerable<(double Chance, double Price)> Bills() =>
        from fault in reasoned.Network.Scope.Faults
        let chance = reasoned.Now(fault.Id)
        where chance > 0.005
        let best = fault.Mends.Select(m => reasoned.Actions.Fixes.GetValueOrDefault(m.Id) is { } known ? (Works: m.Works.Probability, Price: Price(known)) : (Works: 0.0, Price: 0.0))
            .Where(m => m.Works > 0).OrderByDescending(m => m.Works / (m.Price + 1)).FirstOrDefault()
        where best.Works > 0
        select (chance * best.Works, best.Price);

    private double Price(Mend mend) =>
        mend.Effort.Money + (mend.Effort.Minutes + reasoned.Network.Scope.WayTo(mend.Effort).Sum(s => s.Minutes)) * settings.ValueOfHour / 60;

    private string? MayCost(List<(double Chance, double Price)> bills, double mended)
    {
        if (mended < 0.05)
            return null;
        var (from, to) = (Round(Quantile(bills, Low * mended)), Round(Quantile(bills, High * mended)));
        return from == to ? $"Mending costs about {to} {settings.Currency}." : $"Mending costs between {from} and {to} {settings.Currency}, most likely.";
    }

    private static double Quantile(List<(double Chance, double Price)> bills, double at)
    {
        var sum = 0.0;
        return bills.First(b => (sum += b.Chance) >= at - 1e-12).Price;
    }

    private static string Round(double price) =>
        (price < 20 ? Math.Ceiling(price) : Math.Round(price / 5) * 5).ToString("0", CultureInfo.InvariantCulture);

    private static string Works(double mended) => mended switch
    {
        > 0.85 => "It will very likely work again.",
        > 0.6 => "It will probably work again.",
        > 0.35 => "Whether it will work again is open.",
        _ => "It may well not be worth mending.",
    };

    private static string? KnowMore(NextBestStep? next) => next switch
    {
        null or { Kind: StepKind.Close } => null,
        { WaitMinutes: > 8 * 60 } => "We know more tomorrow.",
        { Part.WaitDays: > 0 and var days } => string.Create(CultureInfo.InvariantCulture, $"We know more when the part is here, in about {days:0} days."),
        { Kind: StepKind.Stop } => null,
        { Minutes: var minutes } => minutes < 30 ? "We know more within the hour." : "We know more today.",
    };
}
