namespace Torture;

/// <summary>What came of it, one line for each attack.</summary>
internal static class Table
{
    public static void Write(TextWriter paper, IReadOnlyList<IAttack> attacks, IReadOnlyDictionary<string, Tally> tally)
    {
        paper.WriteLine("| attack | rounds | blows | acknowledged | refused | lost | unread notes | unequal to a fresh relearn |");
        paper.WriteLine("|---|---|---|---|---|---|---|---|");
        foreach (var attack in attacks)
        {
            var t = tally[attack.Name];
            paper.WriteLine(attack.Cannot is { } why ? $"| {attack.Name} | not here: {why} | | | | | | |"
                : FormattableString.Invariant($"| {attack.Name} | {t.Rounds} | {t.Blows} {attack.Blows} | {t.Acknowledged} | {t.Refused} | {t.Lost} | {t.Unread} | {t.Unequal} |"));
        }
    }
}
