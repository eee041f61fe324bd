namespace Triage.Reasoning.Planning;

/// <summary>What a step costs, before it is made into one number.</summary>
/// <param name="Minutes">Bench time.</param>
/// <param name="Money">In the bench's currency.</param>
/// <param name="WaitDays">Days the bench waits, for a part or a soak.</param>
/// <param name="DamageChance">Chance of doing harm, 0 … 1.</param>
/// <param name="DamagePrice">What that harm would cost, in the bench's currency.</param>
public sealed record Expense(double Minutes, double Money = 0, double WaitDays = 0, double DamageChance = 0, double DamagePrice = 0)
{
    /// <summary>One scalar: minutes × value of an hour / 60 + money + waiting days × cost of a day + expected damage.</summary>
    public double At(Rates rates) =>
        Minutes * rates.ValueOfHour / 60 + Money + WaitDays * rates.CostOfDay + DamageChance * DamagePrice;
}

/// <summary>What time is worth at this bench.</summary>
/// <param name="ValueOfHour">Currency per hour of bench time.</param>
/// <param name="CostOfDay">Currency per day that a machine waits.</param>
public sealed record Rates(double ValueOfHour, double CostOfDay);
