using System.Collections.Immutable;
using Triage.Tools.Exam.Cases;
using Triage.Workshop.Answers;

namespace Triage.Tools.Exam.Playing;

/// <summary>A machine played to its end.</summary>
internal sealed record Course
{
    /// <summary>Findings that the complaint told.</summary>
    public ImmutableArray<string> Told { get; init; } = [];

    public ImmutableArray<Turn> Turns { get; init; } = [];

    /// <summary>The ranking after the counter and after each turn that follows.</summary>
    public ImmutableArray<Standing> Standings { get; init; } = [];

    public Ending Ending { get; init; }

    /// <summary>Why it went no further; null when it came to an ending or ran out of steps.</summary>
    public string? Trouble { get; init; }

    /// <summary>Index of the turn that mended the last part of the truth; null when something stayed.</summary>
    public int? MendedBy { get; init; }

    public static Course NotTakenIn(string why) => new() { Trouble = why };
}

/// <summary>Causes, most probable first, and what was still unmended then.</summary>
internal sealed record Standing(ImmutableArray<string> Causes, ImmutableArray<ImmutableArray<string>> Unmended);

/// <summary>One step as the product gave it and as it was done.</summary>
internal sealed record Turn(TurnPart Part, string Id, StepKind Kind, string Name)
{
    /// <summary>Hands-on minutes of the step itself.</summary>
    public double Minutes { get; init; }

    /// <summary>Hands-on minutes for what had to be opened first.</summary>
    public double OpeningMinutes { get; init; }

    /// <summary>What was answered: one row for a single step, one per line for a round.</summary>
    public ImmutableArray<Row> Rows { get; init; } = [];

    /// <summary>Cautions and steps, for a person who plays.</summary>
    public ImmutableArray<string> Says { get; init; } = [];

    /// <summary>A reset, swap or fix after which the machine worked, or a proof that found the fault back: what was seen before may be seen anew.</summary>
    public bool ChangedTheMachine { get; init; }
}

/// <param name="Fact">What it tells, by one name whatever step asks it; null for what tells nothing.</param>
/// <param name="Outcome">As answered; null when it could not be told.</param>
internal sealed record Row(string Id, string Name, string? Fact, string? Outcome)
{
    /// <summary>Its own id, then those of the looks that show the same: whoever judges one judges the other.</summary>
    public ImmutableArray<string> Names { get; init; } = [Id];

    /// <summary>Its note asks for a build that this machine has not.</summary>
    public bool Misfit { get; init; }
}

/// <summary>What a step is for, as far as counting goes.</summary>
internal enum TurnPart
{
    /// <summary>A question to the owner while the machine is handed over.</summary>
    Counter,

    /// <summary>Something secured before diagnosis.</summary>
    Protect,
    Step,

    /// <summary>Whether the mend lasts.</summary>
    Proof,
    Ending,
}
