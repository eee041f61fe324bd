namespace Triage.Reasoning.Planning;

/// <summary>What a step costs, before it is made into one number.</summary>
/// <param name="Minutes">Bench time, hands on.</param>
/// <param name="Money">In the bench's currency.</param>
/// <param name="WaitDays">Days the machine waits for a part.</param>
/// <param name="DamageChance">Chance of doing harm, 0 … 1.</param>
/// <param name="DamagePrice">What that harm would cost, in the bench's currency.</param>
public sealed record Expense(double Minutes, double Money = 0, double WaitDays = 0, double DamageChance = 0, double DamagePrice = 0)
{
    /// <summary>Longest wait in which a machine holds up the bench, in minutes: a working day; from there on it lies on the shelf (common practice, no source).</summary>
    private const double WorkingDay = 8 * 60;

    /// <summary>Minutes that pass while nobody works: a soak, a charge, drying, cooling.</summary>
    public double WaitMinutes { get; init; }

    /// <summary>
    /// One scalar: minutes × value of an hour / 60 + money + waiting days × cost of a day + expected damage; what is waited for at the
    /// bench at the price of a waiting hour, up to a working day, and beyond that at the cost of a day.
    /// </summary>
    public double At(Rates rates) =>
        Minutes * rates.ValueOfHour / 60 + Money + WaitDays * rates.CostOfDay + DamageChance * DamagePrice + Waiting(rates);

    private double Waiting(Rates rates) =>
        Math.Min(WaitMinutes, WorkingDay) / 60 * rates.WaitingHour + Math.Max(0, WaitMinutes - WorkingDay) / (24 * 60) * rates.CostOfDay;
}

/// <summary>What time is worth at this bench.</summary>
/// <param name="ValueOfHour">Currency per hour of bench time.</param>
/// <param name="CostOfDay">Currency per day that a machine waits.</param>
public sealed record Rates(double ValueOfHour, double CostOfDay)
{
    /// <summary>Currency per hour that a machine waits on the bench while nobody works on it.</summary>
    public double WaitingHour { get; init; }

    /// <summary>Least hands-on minutes of a test, round, reset or fix: reading what to do, writing down what was seen.</summary>
    public double HandlingMinutes { get; init; }
}
