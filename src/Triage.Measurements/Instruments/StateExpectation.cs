namespace Triage.Measurements.Instruments;

/// <summary>Where readings lie when a part is in one state.</summary>
/// <param name="State">"good" or the failure mode.</param>
/// <param name="Low">Lowest value of the part itself, in the unit of the good expectation.</param>
/// <param name="High">Highest; for an open part something far beyond the meter.</param>
public sealed record StateExpectation(string State, double Low, double High)
{
    /// <summary>P(over range) that the values do not already imply: a tester that gives up.</summary>
    public double OverRange { get; init; }

    /// <summary>P(a component tester calls it an unknown part); cheap testers fail on good parts too (common practice, no source).</summary>
    public double UnknownPart { get; init; } = 0.05;
}
