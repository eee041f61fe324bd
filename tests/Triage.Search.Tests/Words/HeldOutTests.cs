using Triage.Notes;
using Triage.Notes.Kinds;
using Triage.Search.Words;

namespace Triage.Search.Tests.Words;

/// <summary>
/// How well the common book's phrasings and the recogniser read complaints that neither was written for. The bounds keep what
/// is reached; the aim is a micro-F1 of 0.85.
/// </summary>
public sealed class HeldOutTests(ITestOutputHelper output)
{
    private static readonly string Root = Find(AppContext.BaseDirectory);

    /// <param name="half">Phrasings may be worked on with the odd half in view; only the even half is held out.</param>
    [Theory]
    [InlineData("odd", 0.5)]
    [InlineData("even", 0.5)]
    public void Complaints_by_somebody_else_are_read_this_well(string half, double atLeast)
    {
        var findings = BookReader.Read("common", Path.Combine(Root, "kb", "common")).Notes.OfType<Finding>().ToList();
        var normal = findings.Where(f => !f.Nominal).Select(f => (f.Id, f.Values[0].Id)).ToHashSet();
        var recogniser = Recogniser.Build(findings);
        var (right, said, labelled, normalSaid, normalWrong) = (0, 0, 0, 0, 0);
        foreach (var complaint in HeldOutComplaint.Read(Path.Combine(Root, "tests", "data", "complaints.md")).Where(c => c.IsOdd == (half == "odd")))
        {
            var read = recogniser.Recognise(complaint.Words, complaint.DeviceClass).Findings.Select(f => (f.Finding, f.Value)).ToHashSet();
            right += read.Count(complaint.Labels.Contains);
            said += read.Count;
            labelled += complaint.Labels.Count;
            normalSaid += read.Count(normal.Contains);
            normalWrong += read.Count(r => normal.Contains(r) && complaint.Labels.Any(l => l.Finding == r.Finding && l.Value != r.Value));
            if (half == "odd" && !read.SetEquals(complaint.Labels))
                output.WriteLine($"{complaint.Id}: {complaint.Words}\n   missed {Listed(complaint.Labels.Except(read))}; too much {Listed(read.Except(complaint.Labels))}");
        }

        var (precision, recall) = ((double)right / said, (double)right / labelled);
        var f1 = 2 * precision * recall / (precision + recall);
        output.WriteLine(FormattableString.Invariant($"precision {precision:0.000}, recall {recall:0.000}, micro-F1 {f1:0.000}; {normalWrong} of {normalSaid} normal values where the opposite was said"));
        Assert.True(labelled > 150);
        Assert.True(f1 >= atLeast, $"micro-F1 {f1:0.000}");
    }

    private static string Listed(IEnumerable<(string Finding, string Value)> findings) => string.Join(" ", findings.Select(f => $"{f.Finding}={f.Value}"));

    private static string Find(string folder) =>
        File.Exists(Path.Combine(folder, "Triage.sln")) ? folder : Find(Path.GetDirectoryName(folder) ?? throw new DirectoryNotFoundException("no Triage.sln above the tests"));
}
