using System.Collections.Immutable;

namespace Triage.Workshop.Answers;

/// <summary>Something worth asking the owner.</summary>
/// <param name="Finding">Finding id.</param>
/// <param name="Bits">What the answer tells, in bits over the hypotheses.</param>
public sealed record CounterQuestion(string Finding, string Ask, ImmutableArray<NamedValue> Answers, double Bits);

/// <summary>A value with the sentence that its button says.</summary>
public sealed record NamedValue(string Value, string Name);

/// <summary>One row of a round.</summary>
/// <param name="Values">From normal to worst.</param>
/// <param name="Abnormal">P(any value but the first) now.</param>
public sealed record RoundLine(string Finding, string Name, ImmutableArray<NamedValue> Values, double Abnormal);

/// <summary>Something to secure first.</summary>
/// <param name="Loses">What is lost otherwise; null when nothing in particular.</param>
public sealed record ProtectStep(string Id, string Name, string? Loses);
