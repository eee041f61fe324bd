using System.Text.RegularExpressions;
using Xunit;

namespace Triage.Workshop.Tests.Knowledge;

/// <summary>Every written-out figure of the common notes says where it comes from.</summary>
public sealed partial class FigureSourcesTest(ITestOutputHelper output)
{
    [GeneratedRegex(@"\{p: [^{}]*\}")]
    private static partial Regex Figure { get; }

    [GeneratedRegex("source: \"?(?<source>[^\"}]+)")]
    private static partial Regex Source { get; }

    [GeneratedRegex(@"\b(share|anyway): *[0-9.]")]
    private static partial Regex Bare { get; }

    [Fact]
    public void EveryFigureCarriesItsSource()
    {
        var notes = Directory.EnumerateFiles(Path.Combine(Repository.Root, "kb", "common"), "*.md", SearchOption.AllDirectories)
            .Where(f => Path.GetFileName(f) != "README.md")
            .Select(f => (File: Path.GetFileName(f), Text: File.ReadAllText(f))).ToList();
        var figures = notes.SelectMany(n => Figure.Matches(n.Text).Select(m => (n.File, Source: Source.Match(m.Value).Groups["source"].Value.Trim()))).ToList();

        foreach (var kind in figures.CountBy(f => f.Source).OrderByDescending(k => k.Value))
            output.WriteLine($"{kind.Value,5} {kind.Key}");

        Assert.NotEmpty(figures);
        Assert.Empty(figures.Where(f => f.Source.Length == 0).Select(f => f.File));
        Assert.Empty(notes.Where(n => Bare.IsMatch(n.Text)).Select(n => n.File));
    }
}
