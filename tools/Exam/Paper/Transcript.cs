using System.Globalization;
using Triage.Tools.Exam.Cases;
using Triage.Tools.Exam.Playing;
using Triage.Tools.Exam.Scoring;

namespace Triage.Tools.Exam.Paper;

/// <summary>A machine in one line, and step by step.</summary>
internal static class Transcript
{
    public static string Line(CaseScore score) => string.Create(CultureInfo.InvariantCulture,
        $"{score.Case.Id,-42} {score.Book,-5} rank {(score.Rank is { } rank ? rank : "–"),3}  {score.Course.Turns.Length,2} steps  {Minutes(score)} min of {score.Case.MasterMinutes:0}  {score.Silly,2} silly of {score.Marks.Length,2}  {score.Unsafe} unsafe  first {(score.FirstAcceptable ? "fine " : "wrong")}  {Ended(score)}");

    public static IEnumerable<string> Steps(CaseScore score) =>
        [.. score.Course.Turns.SelectMany((turn, i) => Step(score, turn, i)), .. score.Course.Trouble is { } trouble ? [$"      ! {trouble}"] : Array.Empty<string>()];

    private static IEnumerable<string> Step(CaseScore score, Turn turn, int index)
    {
        var minutes = string.Create(CultureInfo.InvariantCulture, $"{turn.Minutes:0.#} min{(turn.OpeningMinutes > 0 ? $" and {turn.OpeningMinutes:0.#} to open" : "")}");
        if (turn.Rows is not [{ } only])
            yield return $"  {index + 1,2}. {turn.Part} {turn.Kind} {turn.Id}: {turn.Name} ({minutes})";
        foreach (var mark in score.Marks.Where(m => m.Turn == index))
        {
            var start = turn.Rows.Length == 1 ? $"  {index + 1,2}. {turn.Part} {turn.Kind} {turn.Id}: {turn.Name} ({minutes})" : $"      - {mark.Row.Id}: {mark.Row.Name}";
            yield return $"{start} → {mark.Row.Outcome ?? "can't tell"} [{Judged(mark)}]";
        }
    }

    private static string Judged(Mark mark) => $"{mark.Verdict.ToString().ToLowerInvariant()}{(mark.Why is { } why ? $": {why}" : "")}{(mark.Judged ? "" : ", unjudged")}";

    private static string Minutes(CaseScore score) => double.IsFinite(score.Minutes) ? score.Minutes.ToString("0", CultureInfo.InvariantCulture).PadLeft(3) : "  ∞";

    private static string Ended(CaseScore score) =>
        score.Course.Ending == Ending.None ? score.Course.Turns.IsEmpty ? "not taken in" : "not ended" : $"{(score.RightlyEnded ? "rightly" : "wrongly")} ended: {score.Course.Ending}";
}
