using System.Collections.Immutable;
using System.Globalization;
using Triage.Search.Meaning;
using Triage.Tools.Exam.Cases;
using Triage.Tools.Exam.Playing;
using Triage.Workshop.Steps;

namespace Triage.Tools.Exam;

/// <summary>One machine taken in from the command line and played by whoever types.</summary>
internal sealed class Play(Options options, SentenceVectors meaning, TextReader input, TextWriter output)
{
    private const int CausesShown = 5;

    /// <param name="cases">Machines to play; none for one that is described by typing.</param>
    public async Task Of(ImmutableArray<ExamCase> cases)
    {
        await using var bench = ExamBench.Open(options.Books[^1], Path.Combine(options.Root, "kb"), meaning);
        if (cases.IsEmpty)
            Machine(bench, new TypedAnswers(input, output), null);
        foreach (var exam in cases)
            Machine(bench, new TypedAnswers(input, output), exam);
    }

    private void Machine(ExamBench bench, TypedAnswers player, ExamCase? exam)
    {
        output.WriteLine($"Book: {bench.Book}");
        var machine = exam is not null ? TakenIn.Of(exam) : Described(player);
        output.WriteLine($"{machine.Machine}: “{machine.Complaint}”");
        var course = bench.Play(machine, player);
        output.WriteLine();
        output.WriteLine($"Ended: {course.Ending}{(course.Trouble is { } trouble ? $" ({trouble})" : "")}");
        foreach (var (i, standing) in course.Standings.Index())
            output.WriteLine($"Leading after {i} steps: {string.Join(", ", standing.Causes.Take(CausesShown))}");
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{course.Turns.Length} steps, {course.Turns.Sum(t => t.Minutes + t.OpeningMinutes):0} minutes"));
    }

    private static TakeInRequest Described(TypedAnswers player) =>
        TakenIn.Of(player.Words("What machine is it (kind, then make and model)"), player.Words("What one sees of it (supply, build)"), player.Words("What its owner says"));
}
