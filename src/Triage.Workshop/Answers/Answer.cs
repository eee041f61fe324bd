using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Workshop.Answers.Wording;
using Triage.Workshop.Model;

namespace Triage.Workshop.Answers;

/// <summary>What the bench says to a complaint or to the state of a job.</summary>
public sealed record Answer
{
    /// <summary>Name of the device, or of the class when the model has no note.</summary>
    public required string Machine { get; init; }

    /// <summary>Shown before anything else.</summary>
    public required ImmutableArray<Caution> Cautions { get; init; }

    /// <summary>What must be stopped at once whatever the fault.</summary>
    public required ImmutableArray<string> StopAtOnce { get; init; }

    /// <summary>
    /// The machine works now, after what was done last. Then <see cref="Causes"/> say what it was when it came in;
    /// otherwise what is still there.
    /// </summary>
    public bool Works { get; init; }

    /// <summary>Most probable first. The unlisted fault and "nothing wrong" always take part.</summary>
    public required ImmutableArray<RankedCause> Causes { get; init; }

    /// <summary>
    /// How firmly the first place stands, in words: which single number, moved within its 90 % interval, would give it to another cause.
    /// Null where it is not worked out: the evidence contradicts itself, the chances are not exact, or findings that come together moved them.
    /// </summary>
    public string? FirstPlace => FirmlyFirst?.Value;

    /// <summary>Works out <see cref="FirstPlace"/> when first asked for.</summary>
    internal Lazy<string?>? FirmlyFirst { get; init; }

    /// <summary>Resets worth trying, best first.</summary>
    public required ImmutableArray<ResetWorthTrying> Resets { get; init; }

    /// <summary>Null when the evidence contradicts itself.</summary>
    public required NextBestStep? Next { get; init; }

    /// <summary>What is worth asking the owner while he stands at the counter, most telling first; empty once he has left.</summary>
    public ImmutableArray<CounterQuestion> Counter { get; init; } = [];

    /// <summary>What is to be secured before anything is looked for, in order.</summary>
    public ImmutableArray<ProtectStep> Protect { get; init; } = [];

    /// <summary>In what machines of this kind differ and nobody has told of this one yet: one look tells.</summary>
    public ImmutableArray<Trait> Untold { get; init; } = [];

    /// <summary>One sentence for the owner: what it may be, what it may cost, whether it will work again, when one knows more.</summary>
    public string ForOwner { get; init; } = "";

    /// <summary>What the evidence was, with the words it came from.</summary>
    public required ImmutableArray<EvidenceInWords> Evidence { get; init; }

    /// <summary>Things the person should know about this answer: contradictions, entries not used, what was left out.</summary>
    public required ImmutableArray<string> Remarks { get; init; }

    /// <summary>Upper bound on the probability that the answer leaves out; 0 when exact.</summary>
    public double LeftOut { get; init; }

    /// <summary>Works out <see cref="ExactlyOne"/>; null when the evidence contradicts itself.</summary>
    internal Lazy<ImmutableDictionary<string, double>>? SingleCauses { get; init; }

    /// <summary>P(fault | everything recorded, and exactly one listed fault is there), summing to 1. Worked out when first asked for.</summary>
    public ImmutableDictionary<string, double> ExactlyOne() => SingleCauses?.Value ?? ImmutableDictionary<string, double>.Empty;

    /// <summary>Works out every <see cref="JobBehind.Without"/> on all cores, for who is about to show them.</summary>
    public void CompareJobs() => Parallel.ForEach(Causes.SelectMany(c => c.Jobs), job => _ = job.Without);

    public RankedCause? Cause(string fault) => Causes.FirstOrDefault(c => c.Fault == fault);
}

/// <summary>A cause with its probability: still there now, or, once the machine works, there when it came in.</summary>
public sealed record RankedCause
{
    /// <summary>Fault id; <see cref="SpecialFaults"/> for the two that no note lists.</summary>
    public required string Fault { get; init; }

    public required string Name { get; init; }

    /// <summary>P(cause | everything recorded), 0 … 1.</summary>
    public required double Probability { get; init; }

    /// <summary>Lower end of the 90 % interval.</summary>
    public required double Lower { get; init; }

    /// <summary>Upper end of the 90 % interval.</summary>
    public required double Upper { get; init; }

    /// <summary>In words: "strong, because the reset only held until power was lost".</summary>
    public required string Why { get; init; }

    /// <summary>Each piece of evidence with its weight for this cause, strongest first.</summary>
    public required ImmutableArray<WeighedEvidence> Weights { get; init; }

    /// <summary>Closed jobs that had this cause, newest first, with what each changed here.</summary>
    public required ImmutableArray<JobBehind> Jobs { get; init; }

    public bool IsUnlisted => Fault == SpecialFaults.Unlisted;
}

/// <summary>A closed job behind a cause.</summary>
public sealed record JobBehind(string Job, string Name, string Machine, Grade Grade)
{
    internal Lazy<double>? IfNotClosed { get; init; }

    /// <summary>Probability of the cause if that job had not been closed, worked out when first asked for; null for all but a few jobs.</summary>
    public double? Without => IfNotClosed?.Value;
}

/// <summary>One piece of evidence in words.</summary>
/// <param name="Entry">Index of the log entry that recorded it; null outside a job.</param>
/// <param name="SaidAs">The words it was recognised in.</param>
public sealed record EvidenceInWords(string Words, int? Entry, string? SaidAs);

/// <summary>A reset with everything one has to know before trying it.</summary>
public sealed record ResetWorthTrying
{
    public required string Reset { get; init; }

    public required string Name { get; init; }

    public required ImmutableArray<Caution> Cautions { get; init; }

    public required ImmutableArray<string> Before { get; init; }

    public required ImmutableArray<string> Steps { get; init; }

    /// <summary>What it erases; null when nothing.</summary>
    public required string? Erases { get; init; }

    /// <summary>Why it may not be tried yet; null when it may.</summary>
    public required string? Blocked { get; init; }

    public required double Minutes { get; init; }

    /// <summary>P(the machine works right after).</summary>
    public required double ChanceWorks { get; init; }

    /// <summary>P(it still works after power is lost).</summary>
    public required double ChanceHolds { get; init; }

    /// <summary>What its outcome would tell, in words.</summary>
    public required string Tells { get; init; }
}

/// <summary>The step with the least expected cost to a working machine.</summary>
public sealed record NextBestStep
{
    /// <summary>Id of a test, finding (a question), reset, fix, or way of stopping.</summary>
    public required string Id { get; init; }

    public required StepKind Kind { get; init; }

    public required string Name { get; init; }

    /// <summary>Shown before the steps.</summary>
    public required ImmutableArray<Caution> Cautions { get; init; }

    public required ImmutableArray<string> Steps { get; init; }

    /// <summary>Of a round: what one looks at, in order, without what is known already or could change nothing. Empty for everything else.</summary>
    public ImmutableArray<RoundLine> Rows { get; init; } = [];

    /// <summary>Minutes that pass while nobody works.</summary>
    public double WaitMinutes { get; init; }

    /// <summary>Names of what has to be opened first.</summary>
    public required ImmutableArray<string> Opens { get; init; }

    public required ImmutableArray<string> Tools { get; init; }

    /// <summary>Its own price now, opening included, in the bench's currency.</summary>
    public required double Price { get; init; }

    public required double Minutes { get; init; }

    /// <summary>Expected cost to a working machine when it is done next.</summary>
    public required double ExpectedCost { get; init; }

    public required ImmutableArray<OutcomeAhead> Outcomes { get; init; }

    /// <summary>In a sentence: how long it takes, and what its likeliest outcomes lead to.</summary>
    public required string Why { get; init; }

    /// <summary>What would have to be true for the runner-up to be better, in words; null when there is none, or nothing would do it.</summary>
    public string? Turning => TurnsAt?.Value;

    /// <summary>Works out <see cref="Turning"/> when first asked for.</summary>
    internal Lazy<string?>? TurnsAt { get; init; }

    /// <summary>Other allowed steps, next best first.</summary>
    public required ImmutableArray<OtherStep> Others { get; init; }

    /// <summary>Questions, looks and tests that would tell most about what it is, whatever they save: for when no listed cause explains what was seen.</summary>
    public ImmutableArray<OtherStep> ToLearnMore { get; init; } = [];

    /// <summary>Ways to end the job without mending it, cheapest first.</summary>
    public ImmutableArray<OtherStep> Endings { get; init; } = [];

    /// <summary>Steps that a hard rule forbids now, with the reason.</summary>
    public required ImmutableArray<ForbiddenStep> Forbidden { get; init; }

    /// <summary>For a fix that needs a part: what the replacement must match, what may be better, what must not change.</summary>
    public ReplacementPart? Part { get; init; }
}

public enum StepKind
{
    Ask,
    Look,
    Listen,
    Measure,
    Provoke,

    /// <summary>One look at several things.</summary>
    Round,

    /// <summary>Before anything is looked for: what can be lost is secured.</summary>
    Protect,
    Reset,
    Swap,
    Fix,

    /// <summary>It works: see whether that lasts.</summary>
    Recheck,

    /// <summary>It works and it held: close the job.</summary>
    Close,
    Stop,
}

/// <param name="Id">Value of a finding, outcome of a test, or works / no-change.</param>
/// <param name="Then">What would come next, in words.</param>
public sealed record OutcomeAhead(string Id, string Name, double Chance, string Then);

public sealed record OtherStep(string Id, StepKind Kind, string Name, double Price, double ExpectedCost)
{
    /// <summary>Shown before the steps.</summary>
    public ImmutableArray<Caution> Cautions { get; init; } = [];

    public ImmutableArray<string> Steps { get; init; } = [];
}

public sealed record ForbiddenStep(string Id, StepKind Kind, string Name, string Why);

/// <summary>What a replacement has to be like.</summary>
public sealed record ReplacementPart(
    string PartClass, string? Designator, string? Rating, double Money, double WaitDays,
    ImmutableArray<string> MustMatch, ImmutableArray<string> MayBeBetter, ImmutableArray<string> MustNotChange, ImmutableArray<string> NewCanBeBad);
