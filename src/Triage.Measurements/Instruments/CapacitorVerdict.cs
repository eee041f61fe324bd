namespace Triage.Measurements.Instruments;

/// <summary>What three looks at a capacitor on an ohm range say.</summary>
/// <param name="Behaviour">What it does.</param>
/// <param name="Why">In words, from the values.</param>
/// <param name="Next">What to do next, caution first.</param>
public sealed record CapacitorVerdict(CapacitorBehaviour Behaviour, string Why, string Next);

/// <summary>How a capacitor behaves on an ohm range.</summary>
public enum CapacitorBehaviour
{
    /// <summary>Climbs as it should: takes charge. Says nothing of its series resistance.</summary>
    TakesCharge,

    /// <summary>Flat and low all three times.</summary>
    Shorted,

    /// <summary>Settles at a resistance: leaks, or something lies in parallel.</summary>
    Leaky,

    /// <summary>Over range at once where it should climb for a while.</summary>
    Open,

    /// <summary>Negative, falling, or far apart with the leads reversed: a residual charge lies.</summary>
    Charged,

    /// <summary>Too small or too slow for this test to tell.</summary>
    CannotTell,
}
