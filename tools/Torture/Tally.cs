namespace Torture;

/// <summary>What became of the rounds of one attack.</summary>
/// <param name="Blows">Kills, faults, cuts, saves.</param>
/// <param name="Acknowledged">Writes that were said to be done.</param>
/// <param name="Refused">Writes that were said not to be.</param>
/// <param name="Lost">Acknowledged writes and editors' texts that are nowhere.</param>
/// <param name="Unread">Notes that do not read.</param>
/// <param name="Unequal">Rounds after which the bench that looked on differs from one opened afresh.</param>
internal sealed record Tally(int Rounds = 0, int Blows = 0, int Acknowledged = 0, int Refused = 0, int Lost = 0, int Unread = 0, int Unequal = 0)
{
    public bool IsBad => Lost + Unread + Unequal > 0;

    public static Tally operator +(Tally a, Tally b) => new(
        a.Rounds + b.Rounds, a.Blows + b.Blows, a.Acknowledged + b.Acknowledged, a.Refused + b.Refused, a.Lost + b.Lost, a.Unread + b.Unread, a.Unequal + b.Unequal);
}
