namespace Triage.Measurements.Parts;

/// <summary>How a replacement compares in one respect.</summary>
/// <param name="Respect">"voltage", "speed", "height".</param>
/// <param name="Fit">The verdict.</param>
/// <param name="Why">The rule and its source, in words.</param>
public sealed record FitRemark(string Respect, Fit Fit, string Why);

/// <summary>Verdicts on one respect, best first; the worst decides.</summary>
public enum Fit
{
    Better,
    Same,

    /// <summary>Not said, or acceptable in some places only: look before fitting.</summary>
    Check,
    Unfit,
}
