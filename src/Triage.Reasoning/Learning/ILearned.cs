using System.Collections.Immutable;

namespace Triage.Reasoning.Learning;

/// <summary>
/// Learned numbers: an immutable value, made by <c>Learner.Learn</c> and moved on by <c>With</c> and <c>Without</c>.
/// Levels run from the most special to the most general (device, device class); above them stand the group of the fault and all.
/// </summary>
public interface ILearned
{
    /// <summary>Share of causes among the jobs at these levels.</summary>
    Estimate Share(string fault, ImmutableArray<string> levels);

    /// <summary>Smoothed share of jobs whose cause was new when they closed.</summary>
    Estimate UnlistedShare(ImmutableArray<string> levels);

    /// <summary>P(value | only this cause) for a finding; null when neither a note nor a job links the two.</summary>
    Distribution? Link(string fault, string finding, ImmutableArray<string> levels);

    /// <summary>P(value | no linked cause).</summary>
    Distribution Ambient(string finding);

    /// <summary>Chance that the action silences the fault right after; null when the note does not name the fault.</summary>
    Estimate? Works(string action, string fault);

    /// <summary>Chance that it stays silent, given that it went silent.</summary>
    Estimate? Holds(string action, string fault);

    /// <summary>The factor s of π = s · share, from the share of jobs with two independent causes.</summary>
    double IndependentFaults { get; }

    /// <summary>Jobs counted, by weight.</summary>
    double JobsCounted { get; }
}
