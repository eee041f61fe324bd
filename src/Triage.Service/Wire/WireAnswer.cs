using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Workshop.Answers;

namespace Triage.Service.Wire;

/// <summary>What the bench says to a complaint or to the state of a job.</summary>
internal sealed record WireAnswer
{
    public required string Machine { get; init; }

    /// <summary>Read these before anything else.</summary>
    public required ImmutableArray<WireCaution> Cautions { get; init; }

    public required ImmutableArray<string> StopAtOnce { get; init; }

    public required ImmutableArray<string> Remarks { get; init; }

    public required ImmutableArray<WireCause> Causes { get; init; }

    /// <summary>How firmly the first place stands: which single number, moved within its interval, would change it. Absent when not worked out.</summary>
    public string? FirstPlace { get; init; }

    public required ImmutableArray<WireReset> Resets { get; init; }

    public WireStep? Next { get; init; }

    /// <summary>Worth asking the owner while he stands at the counter, most telling first.</summary>
    public required ImmutableArray<CounterQuestion> Counter { get; init; }

    /// <summary>To be secured before anything is looked for.</summary>
    public required ImmutableArray<ProtectStep> Protect { get; init; }

    /// <summary>One sentence that can be read out to the owner.</summary>
    public required string ForOwner { get; init; }

    public required double LeftOut { get; init; }

    public static WireAnswer Of(Answer answer) => new()
    {
        Machine = answer.Machine,
        Cautions = WireCaution.Of(answer.Cautions),
        StopAtOnce = answer.StopAtOnce,
        Remarks = answer.Remarks,
        Causes = [.. answer.Causes.Select(WireCause.Of)],
        FirstPlace = answer.FirstPlace,
        Resets = [.. answer.Resets.Select(WireReset.Of)],
        Next = answer.Next is { } next ? WireStep.Of(next) : null,
        Counter = answer.Counter,
        Protect = answer.Protect,
        ForOwner = answer.ForOwner,
        LeftOut = answer.LeftOut,
    };
}

internal sealed record WireCaution(Hazard Hazard, string Say, bool HandOver)
{
    public static ImmutableArray<WireCaution> Of(ImmutableArray<Caution> cautions) => [.. cautions.Select(c => new WireCaution(c.Hazard, c.Say, c.HandOver))];
}

/// <summary>A cause with its probability now and its 90 % interval.</summary>
internal sealed record WireCause(string Fault, string Name, double Probability, double Lower, double Upper, string Why)
{
    /// <summary>Weight of each piece of evidence, in decibans.</summary>
    public required ImmutableArray<WireWeight> Weights { get; init; }

    public required ImmutableArray<WireJobBehind> Jobs { get; init; }

    public static WireCause Of(RankedCause cause) => new(cause.Fault, cause.Name, cause.Probability, cause.Lower, cause.Upper, cause.Why)
    {
        Weights = [.. cause.Weights.Select(w => new WireWeight(w.Words, double.IsFinite(w.Decibans) ? w.Decibans : null))],
        Jobs = [.. cause.Jobs.Select(j => new WireJobBehind(j.Job, j.Name, j.Machine, j.Grade, j.Without))],
    };
}

/// <param name="Decibans">Absent where it settles the matter: no number is large enough.</param>
internal sealed record WireWeight(string Words, double? Decibans);

/// <param name="Without">Probability of the cause if that job had not been closed; absent when not worked out.</param>
internal sealed record WireJobBehind(string Job, string Name, string Machine, Grade Grade, double? Without);

internal sealed record WireReset(string Reset, string Name, double Minutes, double ChanceWorks, double ChanceHolds, string Tells)
{
    public required ImmutableArray<WireCaution> Cautions { get; init; }

    public required ImmutableArray<string> Before { get; init; }

    public required ImmutableArray<string> Steps { get; init; }

    public string? Erases { get; init; }

    /// <summary>Why it may not be tried yet; absent when it may.</summary>
    public string? Blocked { get; init; }

    public static WireReset Of(ResetWorthTrying reset) => new(reset.Reset, reset.Name, reset.Minutes, reset.ChanceWorks, reset.ChanceHolds, reset.Tells)
    {
        Cautions = WireCaution.Of(reset.Cautions),
        Before = reset.Before,
        Steps = reset.Steps,
        Erases = reset.Erases,
        Blocked = reset.Blocked,
    };
}
