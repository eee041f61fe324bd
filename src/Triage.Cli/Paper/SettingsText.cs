using System.Globalization;
using Triage.Workshop.Knowledge;

namespace Triage.Cli.Paper;

/// <summary>What the bench says of itself.</summary>
internal static class SettingsText
{
    private const int Label = 24;

    public static void Write(Sheet paper, BenchSettings settings)
    {
        paper.Title("Settings of the bench");
        paper.Field("value of an hour", Exactly(settings.ValueOfHour, settings), Label);
        paper.Field("cost of a waiting day", Exactly(settings.CostOfDay, settings), Label);
        paper.Field("usual worth", Exactly(settings.UsualWorth, settings), Label);
        paper.Field("price of handing over", Exactly(settings.HandOverPrice, settings), Label);
        paper.Field("tools", settings.Tools is { } tools ? string.Join(", ", tools) : "nobody listed them: every tool counts as there", Label);
        paper.Field("instruments", $"{settings.Instruments.Length} set up; triage instruments", Label);
        paper.Field("drawer", $"{settings.Drawer.Length} listed; triage drawer", Label);
    }

    /// <summary>As it was set.</summary>
    private static string Exactly(double amount, BenchSettings settings) => $"{amount.ToString(CultureInfo.InvariantCulture)} {settings.Currency}";
}
