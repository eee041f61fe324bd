using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Search.Words;
using Triage.Workshop.Answers;

namespace Triage.Workshop.Steps;

/// <summary>A complaint with what was understood of it and the answer to it.</summary>
/// <param name="Job">The job as it would be taken in; null when the machine is not known.</param>
/// <param name="Recognition">Findings with the words they came from, and what was not understood.</param>
/// <param name="Answer">Null when refused.</param>
public sealed record Asking(Job? Job, Recognition Recognition, Answer? Answer, Refusal? Refused)
{
    /// <summary>Things to know: what was not understood, how the machine was guessed.</summary>
    public ImmutableArray<string> Remarks { get; init; } = [];
}

/// <summary>A finding told beside the complaint.</summary>
/// <param name="Finding">Finding id.</param>
/// <param name="Value">One of its values.</param>
public sealed record SeenFinding(string Finding, string Value);
