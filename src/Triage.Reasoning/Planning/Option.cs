using System.Collections.Immutable;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Planning;

/// <summary>Something that could be done next.</summary>
/// <param name="Id">Unique among the options of a problem.</param>
/// <param name="Expense">Cost of doing it, without opening anything.</param>
public abstract record Option(string Id, Expense Expense)
{
    /// <summary>Access step that must be open; null when nothing needs opening.</summary>
    public string? Access { get; init; }

    /// <summary>Options that must have been done before this one is allowed (cold checks before power, in place before removal).</summary>
    public ImmutableArray<string> After { get; init; } = [];

    /// <summary>A hard rule that forbids it now (consent, licence, spending limit), in words; no cost can buy it. Null when allowed.</summary>
    public string? Blocked { get; init; }

    /// <summary>Price in the bench's currency without opening anything; what is done by hand takes at least the handling.</summary>
    public virtual double Price(Rates rates) => (Expense with { Minutes = Math.Max(Expense.Minutes, rates.HandlingMinutes) }).At(rates);
}

/// <summary>A question, look, test or provocation: reveals the value of a finding and changes nothing.</summary>
public sealed record TestOption(string Id, Expense Expense, Finding Reveals) : Option(Id, Expense);

/// <summary>One look at several things at one price: reveals all its findings, independent of each other given what is wrong, and changes nothing.</summary>
/// <param name="Id">Unique among the options of a problem.</param>
/// <param name="Expense">Cost of the whole round.</param>
/// <param name="Reveals">In the order in which one looks, 1 to 60; the first value of each is the normal one, of nominal findings too.</param>
public sealed record RoundOption(string Id, Expense Expense, ImmutableArray<Finding> Reveals) : Option(Id, Expense);

/// <summary>
/// A reset, swap or fix: clears each covered (root, state) with chance Works · Holds, independently, and whether the unit
/// then works is seen at once. What it does not cover stays.
/// </summary>
public sealed record FixOption(string Id, Expense Expense, ImmutableArray<Clearing> Clears) : Option(Id, Expense)
{
    /// <summary>Tests and rounds that could refute it. It waits for one of them while that is worth its price (<see cref="MeasureFirst"/>).</summary>
    public ImmutableArray<string> CheckedBy { get; init; } = [];
}

/// <summary>Giving up in some way: park, part out, work around, hand over. Always allowed unless blocked; ends the job.</summary>
public sealed record StopOption(string Id, Expense Expense) : Option(Id, Expense)
{
    public override double Price(Rates rates) => Expense.At(rates);
}
