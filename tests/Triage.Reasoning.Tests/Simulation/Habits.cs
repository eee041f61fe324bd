namespace Triage.Reasoning.Tests.Simulation;

/// <summary>What people and machines of a simulated workshop do that the learner's model says nothing of; none by default.</summary>
sealed record Habits
{
    public static Habits AsModelled { get; } = new();

    /// <summary>P(a finding is checked), P(it is written down | checked), both whatever its value.</summary>
    public double Checks { get; init; } = 0.7;

    public double Records { get; init; } = 0.8;

    /// <summary>P(a normal value is written down, relative to an abnormal one).</summary>
    public double RecordsNormal { get; init; } = 1;

    /// <summary>P(the cause written down is another one).</summary>
    public double Misdiagnoses { get; init; }

    /// <summary>
    /// A fault is mild or severe, half and half; chances to show move by this part of the way to 0 or 1, so that the findings of one
    /// cause depend on each other while each alone is as likely as before.
    /// </summary>
    public double Severity { get; init; }
}
