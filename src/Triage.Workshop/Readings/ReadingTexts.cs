using Triage.Measurements;
using Triage.Measurements.Quantities;

namespace Triage.Workshop.Readings;

/// <summary>Why a reading is not weighed, and what to do about it.</summary>
internal static class ReadingTexts
{
    public const string TwoMoreLooks = "one look at a capacitor says little: look again after 30 s, and with the leads reversed";

    public const string Expected = "it is of a good part; kept as what the part in question should read";

    public static string NotTrusted(MeasurementProblem problem) => problem.ToString();

    public static string InstrumentCannot(string instrument, string mode) => $"{instrument} does not measure {mode}, as the bench's settings say; read it with another";

    public static string Burden(string instrument, double volts) =>
        $"{instrument} itself drops up to {ValueText.Format(new(volts, Unit.Volt))} in its way, so without it more flows";

    public static string NotOnTheList(string designator, string machine) =>
        $"{designator} is not among the parts of {machine}: add it to the parts list of the device's note, with its part class and rating";

    public static string BetweenParts(string from, string to) =>
        $"it goes from {from} to {to}, so it is of what lies between; put both leads on one part to judge that part";

    public static string AgainstGround(string part) => $"it was read against ground; put both leads on {part} to judge it";

    public static string SeveralParts(string words) => $"“{words}” can mean several parts; name the designator";

    public static string NoPart(string words, string machine) => $"“{words}” names no part of {machine}; name a designator or a role";

    public static string NoPartClass(string partClass) => $"there is no note of the part class “{partClass}”; write one";

    public static string NothingSaidOf(string partClass, string mode) => $"the note of {partClass} does not say what {mode} mean there; add it under readings";

    public static string WhichTerminal(string part, IEnumerable<string> terminals) => $"say where on {part} it was read: {string.Join(", ", terminals)}";

    public static string PowerWasOff(string part) => $"{part} tells its voltage only with the power on; switch on (limited first) and read again";

    public static string NoRating(string part) => $"the rating of {part} is not known; add rating to it in the device's note";

    public static string CountedWith(string test) => $"counted once, with the outcome of “{test}”";
}
