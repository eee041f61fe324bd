using System.Text.RegularExpressions;
using Xunit;

namespace Triage.House.Tests;

public sealed partial class HabitsTest
{
    private static readonly string[] Sources = [.. Checkout.Files("*.cs").Where(f => f.StartsWith("src/", StringComparison.Ordinal))];

    [Fact]
    public void Every_path_in_the_developers_page_exists()
    {
        var paths = Paths.Matches(Checkout.Read("DEVELOPERS.md")).Select(m => m.Groups[1].Value).Distinct().ToList();
        Assert.True(paths.Count > 20);
        Assert.Equal([], paths.Where(p => !File.Exists(Path.Combine(Checkout.Root, p)) && !Directory.Exists(Path.Combine(Checkout.Root, p))));
    }

    [Fact]
    public void No_warning_is_silenced_in_the_code() =>
        Assert.Equal([], Sources.Where(f => Checkout.Read(f).Contains("#pragma", StringComparison.Ordinal)));

    [Fact]
    public void No_clock_is_read_behind_the_callers_back() =>
        Assert.Equal([], Sources.Where(f => AmbientTime.IsMatch(Checkout.Read(f))));

    [Fact]
    public void No_file_is_called_a_manager_helper_or_util() =>
        Assert.Equal([], Sources.Where(f => VagueName.IsMatch(Path.GetFileName(f))));

    [Fact]
    public void Half_of_the_files_have_at_most_80_lines_and_few_have_over_300()
    {
        var lengths = Sources.Select(f => (File: f, Lines: File.ReadLines(Path.Combine(Checkout.Root, f)).Count())).OrderBy(f => f.Lines).ToList();
        Assert.InRange(lengths[lengths.Count / 2].Lines, 1, 80);
        Assert.Equal([], lengths.Where(f => f.Lines > 400).Select(f => $"{f.File}: {f.Lines}"));
    }

    [GeneratedRegex(@"`((?:src|tests|tools|kb)/[^`\s*]+)`")]
    private static partial Regex Paths { get; }

    [GeneratedRegex(@"DateTime(Offset)?\.(Utc)?Now|DateTime\.Today")]
    private static partial Regex AmbientTime { get; }

    [GeneratedRegex("(Manager|Helper|Util|Utils|Utilities)\\.cs$")]
    private static partial Regex VagueName { get; }
}
