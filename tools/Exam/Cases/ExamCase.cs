using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Tools.Exam.Cases;

/// <summary>A machine with a known fault: what its owner says, what is wrong, and what every step of the product would show.</summary>
internal sealed record ExamCase(string Id, string Class)
{
    public string MachineName { get; init; } = "";

    /// <summary>What whoever takes it in sees of it.</summary>
    public string Looks { get; init; } = "";

    public string Complaint { get; init; } = "";

    /// <summary>Bought as defective, or one's own: nobody to ask.</summary>
    public bool NoOwner { get; init; }

    /// <summary>Traits of this machine with its values; untold when only the looks tell.</summary>
    public Build ToldBuild { get; init; } = Build.Untold;

    /// <summary>Parts of the truth, each by the ids of the faults that describe it (usually one).</summary>
    public ImmutableArray<ImmutableArray<string>> Truth { get; init; } = [];

    /// <summary>A part of the truth that no note describes; null when all are.</summary>
    public string? Missing { get; init; }

    public ImmutableArray<Ending> RightEndings { get; init; } = [];

    public ImmutableArray<KnownAnswer> Answers { get; init; } = [];

    public ImmutableDictionary<string, Judgement> Judged { get; init; } = ImmutableDictionary<string, Judgement>.Empty;

    /// <summary>The master's steps up to the cause.</summary>
    public int MasterSteps { get; init; }

    /// <summary>The master's hands-on minutes up to the cause.</summary>
    public double MasterMinutes { get; init; }
}

/// <summary>What a question, look, reading, reset or fix of the product shows on this machine.</summary>
/// <param name="Id">Test, finding, reset or fix id.</param>
/// <param name="Value">Value of the finding, outcome of the test; works, no-change, worse, not-seen or gone-again for a reset or fix; not-possible for what is to be secured; cannot-tell.</param>
/// <param name="When">“before” the mend, “after-mend”, or the id of a fault: once that one is mended.</param>
internal sealed record KnownAnswer(string Id, string Value, string When)
{
    public const string Before = "before", AfterMend = "after-mend", CannotTell = "cannot-tell", GoneAgain = "gone-again", NotPossible = "not-possible";
}

/// <summary>What a technician thinks of a step on this machine.</summary>
/// <param name="Minutes">Hands-on minutes where the case says them; null for the product's own.</param>
internal sealed record Judgement(Verdict? Is, double? Minutes = null)
{
    /// <summary>Steps of which one must have been done before; until then it is what <see cref="Else"/> says.</summary>
    public ImmutableArray<string> After { get; init; } = [];

    /// <summary>Steps after which it is what <see cref="Else"/> says.</summary>
    public ImmutableArray<string> Until { get; init; } = [];

    public Verdict Else { get; init; } = Verdict.Silly;

    /// <summary>Null when nobody judged it.</summary>
    public Verdict? Given(IReadOnlySet<string> done) =>
        (After.IsEmpty || After.Any(done.Contains)) && !Until.Any(done.Contains) ? Is : Else;
}

internal enum Verdict
{
    Fine,
    Silly,
    Never,
}

/// <summary>How a job came to its end.</summary>
internal enum Ending
{
    /// <summary>The steps were used up, or the product knew no further.</summary>
    None,
    Mended,
    HandedOver,
    NotWorthIt,
    NothingWrong,
    WorkedAround,
}
