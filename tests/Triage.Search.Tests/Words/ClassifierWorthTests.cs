using Triage.Complaints;
using Triage.Notes;
using Triage.Notes.Kinds;
using Triage.Search.Words;

namespace Triage.Search.Tests.Words;

/// <summary>
/// Whether a classifier trained on past jobs reads the even half of the held-out complaints better than phrasings alone, as jobs grow. The past jobs'
/// complaints are the odd half, each with one word in five lost, as often as it takes. Run with -showLiveOutput for the figures.
/// </summary>
[Trait("run", "thorough")]
public sealed class ClassifierWorthTests(ITestOutputHelper output)
{
    private static readonly string Root = Find(AppContext.BaseDirectory);

    [Theory]
    [InlineData(120)]
    [InlineData(960)]
    public void Suggestions_taken_for_findings_would_not_read_better(int jobs)
    {
        var findings = BookReader.Read("common", Path.Combine(Root, "kb", "common")).Notes.OfType<Finding>().ToList();
        var complaints = LabelledComplaint.Read(Path.Combine(Root, "tests", "data", "complaints.md"));
        var classifier = ComplaintClassifier.Train(PastJobs([.. complaints.Where(c => c.IsOdd)], jobs, new Random(7)), seed: 1);
        var recogniser = Recogniser.Build(findings);
        var (without, with) = (new RecognitionScore(findings), new RecognitionScore(findings));
        foreach (var complaint in complaints.Where(c => !c.IsOdd))
        {
            var read = recogniser.Recognise(complaint.Words, complaint.DeviceClass);
            without.Add(complaint, read.Findings);
            with.Add(complaint, read.Findings.Concat(Suggested(complaint, read)));
        }

        output.WriteLine($"{jobs} jobs, {classifier?.Suggestable.Length ?? 0} values learned\n  without {without}\n  with    {with}");
        Assert.True(with.F1 <= without.F1 + 0.01, $"{with.F1:0.000} with, {without.F1:0.000} without");

        IEnumerable<RecognisedFinding> Suggested(LabelledComplaint complaint, Recognition read) =>
            (classifier?.Suggest(complaint.Words) ?? [])
                .Where(s => read.Findings.All(f => f.Finding != s.Finding) && findings.First(f => f.Id == s.Finding) is var finding
                    && (finding.Classes.IsEmpty || complaint.DeviceClass is null || finding.Classes.Contains(complaint.DeviceClass)))
                .Select(s => new RecognisedFinding(s.Finding, s.Value, "", default, 0));
    }

    private static IEnumerable<Job> PastJobs(IReadOnlyList<LabelledComplaint> complaints, int count, Random random) =>
        [.. Enumerable.Range(0, count).Select(i =>
        {
            var complaint = complaints[random.Next(complaints.Count)];
            var words = string.Join(' ', complaint.Words.Split(' ').Where(_ => random.Next(5) > 0));
            return Shelf.Job($"past-{i:0000}", "past", null, words, 1, JobOutcome.Mended, [.. complaint.Labels.Select(l => $"{l.Finding}={l.Value}")]);
        })];

    private static string Find(string folder) =>
        File.Exists(Path.Combine(folder, "Triage.sln")) ? folder : Find(Path.GetDirectoryName(folder) ?? throw new DirectoryNotFoundException("no Triage.sln above the tests"));
}
