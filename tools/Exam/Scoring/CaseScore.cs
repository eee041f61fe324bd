using System.Collections.Immutable;
using Triage.Tools.Exam.Cases;
using Triage.Tools.Exam.Playing;

namespace Triage.Tools.Exam.Scoring;

/// <summary>How one machine was mended with one book.</summary>
internal sealed record CaseScore(ExamCase Case, string Book, Course Course)
{
    /// <summary>Nobody is asked for the cause sooner.</summary>
    private const int FewestSteps = 3;

    public ImmutableArray<Mark> Marks { get; } = new Marking(Case, Course).Marks();

    public int Silly => Marks.Count(m => m.Verdict == Verdict.Silly);

    public int Unsafe => Marks.Count(m => m.Verdict == Verdict.Never);

    public ImmutableArray<string> Unjudged => [.. Marks.Where(m => !m.Judged).Select(m => m.Row.Id).Distinct()];

    /// <summary>Of the first step towards the cause, none of its lines is unsafe and at most a third is not judged fine.</summary>
    public bool FirstAcceptable =>
        Course.Turns.ToList().FindIndex(t => t.Part is not (TurnPart.Counter or TurnPart.Protect)) is var first and >= 0
        && Marks.Where(m => m.Turn == first).ToList() is var lines
        && lines.TrueForAll(m => m.Verdict != Verdict.Never)
        && lines.Count(m => m is { Verdict: Verdict.Fine, Judged: true }) * 3 >= lines.Count * 2;

    /// <summary>Mended counts only when all of it is mended; what needed no mending counts as nothing wrong however it was ended.</summary>
    public bool RightlyEnded => Course.Ending switch
    {
        Ending.None => false,
        Ending.Mended => Course.MendedBy is not null && (Case.RightEndings.Contains(Ending.Mended) || Case.RightEndings.Contains(Ending.NothingWrong)),
        var ending => Case.RightEndings.Contains(ending),
    };

    /// <summary>Hands-on minutes up to the cause: before the last mend, or before it was ended otherwise. Infinite when it came to neither.</summary>
    public double Minutes =>
        Course.Ending == Ending.None && Course.MendedBy is { } mend ? MinutesBefore(mend)
        : !RightlyEnded ? double.PositiveInfinity
        : MinutesBefore(Course.MendedBy ?? Course.Turns.Length - 1);

    public double MinutesRatio => Minutes / Math.Max(1, Case.MasterMinutes);

    /// <summary>
    /// Place of the worst unmended part of the truth after as many steps as the master needed to the cause; null when a part is not
    /// listed at all.
    /// </summary>
    public int? Rank
    {
        get
        {
            var after = Math.Max(FewestSteps, Case.MasterSteps);
            if (Course.MendedBy is { } mend && StepsBefore(mend) < after)
                return 1;
            if (Course.Standings.IsEmpty || Case.Missing is not null || Case.Truth.IsEmpty)
                return null;
            var standing = Course.Standings[Math.Min(after, Course.Standings.Length - 1)];
            ImmutableArray<int?> places = [.. standing.Unmended.Select(part => Place(part, standing.Causes))];
            return places.Contains(null) ? null : places.DefaultIfEmpty(1).Max();
        }
    }

    private static int? Place(ImmutableArray<string> part, ImmutableArray<string> causes) =>
        part.Select(f => causes.IndexOf(f)).Where(i => i >= 0).Select(i => (int?)(i + 1)).Min();

    private int StepsBefore(int turn) => Course.Turns.Take(turn).Count(t => t.Part != TurnPart.Counter);

    private double MinutesBefore(int turn) =>
        Course.Turns.Take(turn).Where(t => t.Part != TurnPart.Counter).Sum(t => t.OpeningMinutes + (Case.Judged.GetValueOrDefault(t.Id)?.Minutes ?? t.Minutes));
}
