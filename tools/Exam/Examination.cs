using System.Collections.Immutable;
using Triage.Search.Meaning;
using Triage.Tools.Exam.Cases;
using Triage.Tools.Exam.Paper;
using Triage.Tools.Exam.Playing;
using Triage.Tools.Exam.Scoring;

namespace Triage.Tools.Exam;

/// <summary>Plays all cases with each book, the books side by side.</summary>
internal sealed class Examination(Options options, SentenceVectors meaning, TextWriter output)
{
    private readonly Lock writing = new();

    public async Task<ImmutableArray<CaseScore>> Of(ImmutableArray<ExamCase> cases)
    {
        var books = await Task.WhenAll(options.Books.Select(book => Task.Run(() => Of(book, cases))));
        return [.. books.SelectMany(scores => scores)];
    }

    private async Task<ImmutableArray<CaseScore>> Of(string book, ImmutableArray<ExamCase> cases)
    {
        await using var bench = ExamBench.Open(book, Path.Combine(options.Root, "kb"), meaning);
        var scores = ImmutableArray.CreateBuilder<CaseScore>();
        foreach (var exam in cases)
        {
            var score = new CaseScore(exam, book, bench.Play(TakenIn.Of(exam), new KeyAnswers(exam, bench.Live.Current.Notes)));
            scores.Add(score);
            Show(score);
        }

        return scores.ToImmutable();
    }

    private void Show(CaseScore score)
    {
        lock (writing)
        {
            output.WriteLine(Transcript.Line(score));
            foreach (var line in options.Verbose ? Transcript.Steps(score) : [])
                output.WriteLine(line);
        }
    }
}
