using System.Collections.Immutable;
using Triage.Workshop.Answers;

namespace Triage.Service.Wire;

/// <summary>The step with the least expected cost to a working machine.</summary>
internal sealed record WireStep(string Id, StepKind Kind, string Name, string Why)
{
    /// <summary>Read these before the steps.</summary>
    public required ImmutableArray<WireCaution> Cautions { get; init; }

    public required ImmutableArray<string> Steps { get; init; }

    public required ImmutableArray<string> Opens { get; init; }

    public required ImmutableArray<string> Tools { get; init; }

    public required double Minutes { get; init; }

    /// <summary>Minutes that pass while nobody works.</summary>
    public required double WaitMinutes { get; init; }

    /// <summary>Of a round: what one looks at, with the values to send. Empty for everything else.</summary>
    public required ImmutableArray<RoundLine> Rows { get; init; }

    /// <summary>Its own price now, in the bench's currency.</summary>
    public required double Price { get; init; }

    public required double ExpectedCost { get; init; }

    public required ImmutableArray<WireOutcome> Outcomes { get; init; }

    public required ImmutableArray<WireOther> Others { get; init; }

    public required ImmutableArray<WireForbidden> Forbidden { get; init; }

    /// <summary>What would have to be true for the runner-up to be better, in words.</summary>
    public string? Turning { get; init; }

    public WirePart? Part { get; init; }

    public static WireStep Of(NextBestStep step) => new(step.Id, step.Kind, step.Name, step.Why)
    {
        Cautions = WireCaution.Of(step.Cautions),
        Steps = step.Steps,
        Opens = step.Opens,
        Tools = step.Tools,
        Minutes = step.Minutes,
        WaitMinutes = step.WaitMinutes,
        Rows = step.Rows,
        Price = step.Price,
        ExpectedCost = step.ExpectedCost,
        Outcomes = [.. step.Outcomes.Select(o => new WireOutcome(o.Id, o.Name, o.Chance, o.Then))],
        Others = [.. step.Others.Select(o => new WireOther(o.Id, o.Kind, o.Name, o.Price, o.ExpectedCost))],
        Forbidden = [.. step.Forbidden.Select(f => new WireForbidden(f.Id, f.Kind, f.Name, f.Why))],
        Turning = step.Turning,
        Part = step.Part is { } part ? WirePart.Of(part) : null,
    };
}

/// <param name="Id">What to send when this is what came of it.</param>
internal sealed record WireOutcome(string Id, string Name, double Chance, string Then);

internal sealed record WireOther(string Id, StepKind Kind, string Name, double Price, double ExpectedCost);

internal sealed record WireForbidden(string Id, StepKind Kind, string Name, string Why);

/// <summary>What a replacement has to be like.</summary>
internal sealed record WirePart(string PartClass, string? Designator, string? Rating, double Money, double WaitDays)
{
    public required ImmutableArray<string> MustMatch { get; init; }

    public required ImmutableArray<string> MayBeBetter { get; init; }

    public required ImmutableArray<string> MustNotChange { get; init; }

    public required ImmutableArray<string> NewCanBeBad { get; init; }

    public static WirePart Of(ReplacementPart part) => new(part.PartClass, part.Designator, part.Rating, part.Money, part.WaitDays)
    {
        MustMatch = part.MustMatch,
        MayBeBetter = part.MayBeBetter,
        MustNotChange = part.MustNotChange,
        NewCanBeBad = part.NewCanBeBad,
    };
}
