using System.Globalization;
using Triage.Notes.Kinds;
using Triage.Workshop.Answers;
using Triage.Workshop.Answers.Wording;

namespace Triage.Service.Shown;

/// <summary>Short words that the sections share.</summary>
internal static class StepWords
{
    public static string Of(StepKind kind) => kind switch
    {
        StepKind.Ask => "Ask",
        StepKind.Look => "Look",
        StepKind.Listen => "Listen",
        StepKind.Measure => "Measure",
        StepKind.Provoke => "Provoke",
        StepKind.Round => "Look round",
        StepKind.Protect => "First of all",
        StepKind.Reset => "Reset",
        StepKind.Swap => "Swap",
        StepKind.Fix => "Mend",
        StepKind.Recheck => "Re-check",
        StepKind.Close => "Close",
        StepKind.Stop => "Stop",
    };

    public static string Of(JobOutcome outcome) => outcome switch
    {
        JobOutcome.Mended => "mended",
        JobOutcome.WorkedAround => "worked around",
        JobOutcome.PartedOut => "parted out",
        JobOutcome.HandedOver => "handed over",
        JobOutcome.NothingWrong => "nothing wrong with it",
        JobOutcome.Unsolved => "unsolved",
    };

    public static string Of(Grade grade) => grade switch
    {
        Grade.Measured => "measured: shown bad, or old part back and fault back",
        Grade.Swapped => "swapped: a new one helped, and held",
        Grade.HoldUnknown => "hold not known yet",
        Grade.Told => "told, with detail",
        Grade.Hearsay => "hearsay",
    };

    public static string Of(FindingValue value) => (value.Name, value.Id) switch
    {
        (var name, "no") when name == "no" => "not seen",
        (var name, "yes") when name == "yes" => "seen",
        _ => value.Name,
    };

    /// <summary>A value that says by itself what it is about, or the finding with it.</summary>
    public static string Of(Finding finding, FindingValue value) => value.Name == value.Id ? $"{finding.Name}: {Of(value)}" : value.Name;

    public static string Minutes(double minutes) => string.Create(CultureInfo.InvariantCulture, $"{minutes:0.#} min");

    public static string Amount(double amount) => Price.Say(amount);

    public static string Day(DateTimeOffset? at) => at?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "";

    public static string Moment(DateTimeOffset at) => at.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
}
