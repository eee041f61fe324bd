using MadeUpJobs;
using Triage.Notes.Kinds;

namespace Triage.SearchBench;

/// <summary>A mix of questions as a bench asks them, drawn from the notes themselves.</summary>
internal static class Questions
{
    public static Question[] About(Note[] notes, int seed)
    {
        var random = new Random(seed);
        Job[] jobs = [.. notes.OfType<Job>().Where(j => j.Complaint is not null && j.Device is not null)];
        string[][] said = [.. notes.OfType<Finding>().SelectMany(f => f.Values).SelectMany(v => v.Says).Select(s => s.Split(' ')).Where(s => s.Length >= 3)];
        string[] Remarked() => random.Any(jobs).Body.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries);
        string Common() => Some(random.Any(said), random.Next(2, 4), random);
        var words = notes.OfType<Job>().SelectMany(j => j.Body.Split([' ', '\n', '.', ',', ';', ':'], StringSplitOptions.RemoveEmptyEntries))
            .Where(w => w.Length > 4).CountBy(w => w.ToLowerInvariant()).Where(w => w.Value <= 5).Select(w => w.Key).Order(StringComparer.Ordinal).ToArray();
        return
        [
            .. Times(60, () => new Question("one rare word", random.Any(words))),
            .. Times(100, () => new Question("two or three common words", Common())),
            .. Times(60, () => new Question("marking", random.Any<Func<string>>([() => RareWords.Designator(random), () => RareWords.Marking(random), () => random.Any(RareWords.Ratings)])())),
            .. Times(60, () => new Question("phrase", $"\"{Together(Remarked(), random.Next(2, 4), random)}\"")),
            .. Times(80, () => new Question("words and filters", Common())
            {
                Kind = random.Happens(0.5) ? "job" : null,
                Device = random.Happens(0.6) ? random.Any(jobs).Device : null,
                Outcome = random.Happens(0.3) ? "mended" : null,
            }),
            .. Times(40, () => new Question("whole complaint", random.Any(jobs).Complaint!)),
        ];
    }

    private static IEnumerable<Question> Times(int count, Func<Question> make) => Enumerable.Range(0, count).Select(_ => make());

    private static string Some(string[] words, int count, Random random) => string.Join(' ', random.Shuffled(words).Take(count));

    private static string Together(string[] words, int count, Random random)
    {
        var at = random.Next(Math.Max(1, words.Length - count));
        return string.Join(' ', words.Skip(at).Take(count)).Replace("\"", "", StringComparison.Ordinal);
    }
}
