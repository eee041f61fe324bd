using Triage.Workshop.Answers;

namespace Triage.Cli.Paper;

/// <summary>Resets worth trying, with everything one has to know before.</summary>
internal static class ResetCards
{
    public static void Write(Sheet paper, IReadOnlyCollection<ResetWorthTrying> resets)
    {
        if (resets.Count == 0)
            return;
        paper.Heading("Resets worth trying");
        foreach (var reset in resets)
            Card(paper, reset);
    }

    private static void Card(Sheet paper, ResetWorthTrying reset)
    {
        paper.Item("-", $"{reset.Name} ({reset.Reset}), {Amounts.Minutes(reset.Minutes)}: works now {Amounts.Percent(reset.ChanceWorks)}, still works after power is lost {Amounts.Percent(reset.ChanceHolds)}", style: Sheet.Strong);
        Cautions.Write(paper, reset.Cautions, 4);
        if (reset.Erases is { } erases)
            paper.Item("!", $"Erases {erases}.", 4, Sheet.Warning);
        if (reset.Blocked is { } blocked)
            paper.Item("!", $"Not yet: {blocked}", 4, Sheet.Warning);
        foreach (var before in reset.Before)
            paper.Item("First:", before, 4);
        for (var i = 0; i < reset.Steps.Length; i++)
            paper.Item($"{i + 1}.", reset.Steps[i], 4);
        if (reset.Tells.Length > 0)
            paper.Say(reset.Tells, 4);
    }
}
