namespace Triage.Workshop.Readings;

/// <summary>How strong a piece of evidence is called.</summary>
internal static class Strength
{
    /// <summary>Decibans from which a piece of evidence counts as strong, fair or slight: odds of 10, about 3 and 1.6 (after Good 1950 and Jeffreys 1961, Appendix B).</summary>
    public const double Strong = 10, Fair = 5, Slight = 2;

    public static string Of(double decibans) => decibans >= Strong ? "strong" : decibans >= Fair ? "fair" : "slight";
}
