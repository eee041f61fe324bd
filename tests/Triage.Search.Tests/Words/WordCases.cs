using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Triage.Notes.Kinds;
using Triage.Search.Words;

namespace Triage.Search.Tests.Words;

/// <summary>Complaints and what is read out of them, from tests/cases/words.</summary>
public sealed partial class WordCases
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "cases", "words");
    private static readonly Recogniser Recogniser = Recogniser.Build(Vocabulary());

    public static TheoryData<string, string> Cases()
    {
        var cases = new TheoryData<string, string>();
        foreach (var file in Directory.GetFiles(Folder, "*.md").Order(StringComparer.Ordinal).Where(f => !f.EndsWith("vocabulary.md", StringComparison.Ordinal)))
        {
            foreach (Match heading in Heading().Matches(File.ReadAllText(file)))
            {
                cases.Add(Path.GetFileNameWithoutExtension(file), heading.Groups[1].Value);
            }
        }

        return cases;
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Check(string file, string name)
    {
        var text = File.ReadAllText(Path.Combine(Folder, $"{file}.md")).ReplaceLineEndings("\n");
        var deviceClass = ClassLine().Match(text) is { Success: true } c ? c.Groups[1].Value : null;
        var found = Block().Matches(text).Single(b => b.Groups["name"].Value == name);
        var read = Recogniser.Recognise(found.Groups["complaint"].Value, deviceClass);
        Assert.Equal(found.Groups["expected"].Value.TrimEnd('\n'), Written(read));
    }

    [Fact]
    public void Vocabulary_IsLargeEnoughToBeConfusedBy() => Assert.InRange(Vocabulary().Length, 25, 40);

    internal static ImmutableArray<Finding> Vocabulary() =>
    [
        .. File.ReadAllText(Path.Combine(Folder, "vocabulary.md")).ReplaceLineEndings("\n").Split("\n## ").Skip(1).Select(section =>
        {
            var lines = section.Split('\n', StringSplitOptions.RemoveEmptyEntries);
            var head = lines[0].TrimEnd(')').Split(" (");
            return new Finding(head[0], head[0].Replace('-', ' '))
            {
                Classes = head.Length > 1 ? [head[1]] : [],
                Values = [.. lines.Skip(1).Select(l => l[2..].Split(": ")).Select(l => (Id: l[0], Says: l[1].Split(" | "))).Select(v => new FindingValue(v.Id, v.Says[0], [.. v.Says], null))],
            };
        }),
    ];

    /// <summary>In the order of the text: findings, what was not understood; then what was tried, and the notice.</summary>
    private static string Written(Recognition read) => string.Join('\n',
    [
        .. read.Findings.Select(f => (f.Span.Start, Line: $"{f.Finding} = {f.Value}{Circumstances(f)}"))
            .Concat(read.NotUnderstood.Select(p => (p.Span.Start, Line: $"? \"{p.Words}\"")))
            .OrderBy(l => l.Start).Select(l => l.Line),
        .. read.Tried.Select(t => $"tried \"{t.Words}\" {(t.Helped is { } helped ? helped ? "yes" : "no" : "?")}"),
        .. read.Notice is null ? Array.Empty<string>() : [$"! {read.Notice}"],
    ]);

    private static string Circumstances(RecognisedFinding f)
    {
        List<string> said = [.. f.When.Length > 0 ? [$"when {string.Join(" and ", f.When)}"] : Array.Empty<string>()];
        said.AddRange(f.Intermittent ? ["sometimes"] : []);
        said.AddRange(f.Hedged ? ["unsure"] : []);
        said.AddRange(f.Negated ? ["denied"] : []);
        return said.Count == 0 ? "" : $" ({string.Join(", ", said)})";
    }

    [GeneratedRegex(@"^## (.+?)\r?$", RegexOptions.Multiline)]
    private static partial Regex Heading();

    [GeneratedRegex(@"^Class: (.+)$", RegexOptions.Multiline)]
    private static partial Regex ClassLine();

    [GeneratedRegex(@"^## (?<name>.+)\n> (?<complaint>.+)\n```\n(?<expected>[^`]*)```", RegexOptions.Multiline)]
    private static partial Regex Block();
}
