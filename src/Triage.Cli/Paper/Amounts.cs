using System.Globalization;
using Triage.Workshop.Answers.Wording;
using Triage.Workshop.Knowledge;

namespace Triage.Cli.Paper;

/// <summary>Numbers as one reads them.</summary>
internal static class Amounts
{
    public static string Percent(double chance) => chance switch
    {
        > 0 and < 0.005 => "<1 %",
        < 1 and >= 0.995 => ">99 %",
        _ => (100 * chance).ToString("0", CultureInfo.InvariantCulture) + " %",
    };

    /// <summary>"41–79 %".</summary>
    public static string Between(double lower, double upper) =>
        FormattableString.Invariant($"{100 * lower:0}–{100 * upper:0} %");

    public static string Money(double amount, BenchSettings settings) => $"{Price.Say(amount)} {settings.Currency}";

    public static string Minutes(double minutes) =>
        minutes < 120 ? FormattableString.Invariant($"{minutes:0.#} min") : FormattableString.Invariant($"{minutes / 60:0.#} h");

    public static string Date(DateTimeOffset date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    public static string Time(DateTimeOffset date) => date.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
}
