using System.Text;
using System.Text.RegularExpressions;
using Triage.Notes.Linting;
using Triage.Notes.Parsing;

namespace Triage.Notes.Tests;

/// <summary>Cases in tests/cases/notes: each page holds notes as somebody may write them, and every problem that should be found.</summary>
public sealed partial class NoteCaseTests
{
    private static string Folder => Repository.PathOf("tests", "cases", "notes");

    public static TheoryData<string> Pages => [.. Directory.EnumerateFiles(Folder, "*.md").Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)];

    [GeneratedRegex(@"^````note (?<path>\S+)\n(?<text>.*?)^````$", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex NoteBlock { get; }

    [GeneratedRegex(@"^````problems\n(?<text>.*?)^````$", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex ProblemBlock { get; }

    [Theory]
    [MemberData(nameof(Pages))]
    public void Check(string page)
    {
        var text = File.ReadAllText(Path.Combine(Folder, page));
        var readings = NoteBlock.Matches(text).Select(m => NoteReader.Read("case", m.Groups["path"].Value, Encoding.UTF8.GetBytes(m.Groups["text"].Value)));

        var book = Linter.Check([BookIndex.Of("case", readings).ToBook()])[0];

        var expected = ProblemBlock.Match(text).Groups["text"].Value.Trim();
        Assert.Equal(expected, string.Join('\n', book.Problems.Select(p => $"{p.Severity} {p}")), ignoreLineEndingDifferences: true);
    }
}
