using System.Collections.Immutable;
using System.CommandLine;
using Triage.Cli.Paper;
using Triage.Cli.Typed;
using Triage.Workshop.Knowledge;
using Triage.Workshop.Steps;

namespace Triage.Cli.Commands;

/// <summary><c>triage settings</c>: what the bench says of itself.</summary>
internal static class SettingsCommand
{
    public static Command Of(Desk desk)
    {
        var hour = Inputs.Number("--value-of-hour", "Value of an hour at the bench.");
        var day = Inputs.Number("--cost-of-day", "Cost of a day that a machine waits.");
        var worth = Inputs.Number("--usual-worth", "Worth of a working machine when a job does not say.");
        var handOver = Inputs.Number("--hand-over-price", "What somebody licensed asks for a repair.");
        var currency = Inputs.OptionalText("--currency", "Written behind amounts.");
        var tools = Inputs.Texts("--tool", "A tool that is at hand from now on.");
        var gone = Inputs.Texts("--without-tool", "A tool that is not at hand any more.");
        return desk.Command("settings", "What the bench says of itself; an option changes it, the rest stays.", [hour, day, worth, handOver, currency, tools, gone], session =>
        {
            var said = new ChangedSettings
            {
                ValueOfHour = session.Get(hour),
                CostOfDay = session.Get(day),
                UsualWorth = session.Get(worth),
                HandOverPrice = session.Get(handOver),
                Currency = session.Get(currency),
                Tools = Tools(session.Bench.Settings, session.Get(tools) ?? [], session.Get(gone) ?? []),
            };
            if (said != new ChangedSettings())
                RefusedException.ThrowIf(session.Live.Setup.Save(null, said));
            var now = session.Bench.Settings;
            return session.Show(new SettingsPage(now.ValueOfHour, now.CostOfDay, now.UsualWorth, now.HandOverPrice) { Currency = now.Currency, Tools = now.Tools }, paper => SettingsText.Write(paper, now));
        });
    }

    /// <summary>Null when nothing was said of tools.</summary>
    private static ImmutableArray<string>? Tools(BenchSettings now, string[] more, string[] gone)
    {
        if (more.Length == 0 && gone.Length == 0)
            return null;
        var listed = now.Tools ?? [];
        if (Array.Find(gone, tool => !listed.Contains(tool)) is { } unknown)
            throw new RefusedException(CommandTexts.NoTool(unknown, listed));
        return [.. listed.Except(gone), .. more.Except(listed)];
    }
}

/// <summary>What --json says of the settings.</summary>
internal sealed record SettingsPage(double ValueOfHour, double CostOfDay, double UsualWorth, double HandOverPrice)
{
    public required string Currency { get; init; }

    /// <summary>Null when nobody listed them.</summary>
    public ImmutableArray<string>? Tools { get; init; }
}
