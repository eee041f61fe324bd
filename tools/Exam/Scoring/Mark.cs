using System.Collections.Immutable;
using Triage.Tools.Exam.Cases;
using Triage.Tools.Exam.Playing;

namespace Triage.Tools.Exam.Scoring;

/// <summary>A line of a course with what it counts as.</summary>
/// <param name="Turn">Index of its turn.</param>
/// <param name="Why">Why it is silly by computation; null when it is judged.</param>
/// <param name="Judged">Somebody judged it, or its kind needs no judge.</param>
internal sealed record Mark(int Turn, Row Row, Verdict Verdict, string? Why, bool Judged);

/// <summary>Judges every line of a course: by the case's key, and by what can be computed whoever judges.</summary>
internal sealed class Marking(ExamCase exam, Course course)
{
    public const string Repeated = "repeated", AlreadyAnswered = "already answered", DoesNotFit = "does not fit the build";

    /// <summary>Id by which a key judges the proof of a mend.</summary>
    public const string Proof = "proof";

    private readonly HashSet<string> done = [];
    private readonly HashSet<string> sinceChange = [];
    private readonly HashSet<string> known = [.. course.Told];

    public ImmutableArray<Mark> Marks() => [.. course.Turns.SelectMany((turn, i) => Marks(turn, i))];

    private ImmutableArray<Mark> Marks(Turn turn, int index)
    {
        ImmutableArray<Mark> marks = [.. turn.Rows.Select(row => MarkOf(turn, index, row))];
        if (turn.ChangedTheMachine)
        {
            sinceChange.Clear();
            known.Clear();
        }

        foreach (var row in turn.Rows)
            Remember(turn, row);
        return marks;
    }

    private void Remember(Turn turn, Row row)
    {
        done.UnionWith([turn.Id, row.Id]);
        if (turn.Part == TurnPart.Proof)
            return;
        sinceChange.Add(row.Id);
        if (row is { Fact: { } fact, Outcome: not null })
            known.Add(fact);
    }

    private Mark MarkOf(Turn turn, int index, Row row)
    {
        var judgement = turn.Part == TurnPart.Proof ? exam.Judged.GetValueOrDefault(Proof)
            : row.Names.Select(exam.Judged.GetValueOrDefault).FirstOrDefault(j => j is not null);
        var said = judgement?.Given(done);
        return said == Verdict.Never ? new(index, row, Verdict.Never, null, true)
            : Computed(turn, row) is { } why ? new(index, row, Verdict.Silly, why, true)
            : said is { } verdict ? new(index, row, verdict, null, true)
            : Unjudged(turn, index, row);
    }

    private string? Computed(Turn turn, Row row) =>
        turn.Part is TurnPart.Proof or TurnPart.Ending ? null
        : sinceChange.Contains(row.Id) ? Repeated
        : row.Misfit ? DoesNotFit
        : row.Fact is { } fact && known.Contains(fact) ? AlreadyAnswered
        : null;

    /// <summary>An ending is right or wrong by itself, a mend has to be proven, and securing is silly only where somebody says that nothing can be lost.</summary>
    private Mark Unjudged(Turn turn, int index, Row row) => turn.Part switch
    {
        TurnPart.Ending => new(index, row, exam.RightEndings.Contains(course.Ending) ? Verdict.Fine : Verdict.Silly, null, true),
        TurnPart.Proof => new(index, row, Verdict.Fine, null, true),
        TurnPart.Protect => new(index, row, Verdict.Fine, null, true),
        TurnPart.Counter or TurnPart.Step => new(index, row, Verdict.Silly, "nobody judged it", false),
    };
}
