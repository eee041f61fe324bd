using System.Globalization;

namespace Triage.Service.Shown.Pictures;

/// <summary>Probabilities as people read them.</summary>
internal static class Percent
{
    /// <summary>"31 %"; small and large ones say so instead of claiming certainty.</summary>
    public static string Of(double probability) => probability switch
    {
        <= 0 => "0 %",
        < 0.01 => "under 1 %",
        >= 1 => "100 %",
        > 0.99 => "over 99 %",
        _ => string.Create(CultureInfo.InvariantCulture, $"{100 * probability:0} %"),
    };
}
