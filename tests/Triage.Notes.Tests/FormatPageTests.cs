using System.Text;
using Triage.Notes.Linting;
using Triage.Notes.Parsing;

namespace Triage.Notes.Tests;

/// <summary>The page that says how notes are written, and the program, say the same.</summary>
public sealed class FormatPageTests
{
    public static TheoryData<int, string> Examples => [.. ExamplesOfPage().Select((text, i) => (i, text))];

    [Theory]
    [MemberData(nameof(Examples))]
    public void EveryExampleReadsWithoutProblems(int number, string example)
    {
        var reading = NoteReader.Read("page", $"example-{number}.md", Encoding.UTF8.GetBytes(example));

        Assert.Empty(reading.Problems);
        Assert.NotNull(reading.Note);
    }

    [Fact]
    public void ThePageShowsEveryKind()
    {
        var kinds = ExamplesOfPage().Select((text, i) => NoteReader.Read("page", $"{i}.md", Encoding.UTF8.GetBytes(text)).Note!.Kind);

        Assert.Equal(Enum.GetValues<Kinds.NoteKind>(), kinds.Distinct().Order());
    }

    internal static IEnumerable<string> ExamplesOfPage() =>
        File.ReadAllText(Repository.PathOf("kb", "FORMAT.md")).Split("```yaml\n").Skip(1)
            .SelectMany(block => block[..block.IndexOf("```", StringComparison.Ordinal)].Split("---\n"))
            .Select(yaml => $"---\n{yaml}---\n");
}
