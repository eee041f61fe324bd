using System.Xml.Linq;
using Triage.Notes.Kinds;
using Triage.Service.Shown.Pictures;
using Xunit;

namespace Triage.Service.Tests.Pages;

/// <summary>A cassette deck: the mechanism lies behind the cover, the flywheel behind the mechanism, the panel behind the cover again.</summary>
public class AccessTreeTests
{
    private static readonly AccessStep[] Steps =
    [
        new("case", "top cover", 3, null), new("panel", "front & keys", 6, "case"), new("mechanism", "mechanism out", 15, "case"), new("capstan", "flywheel bracket", 5, "mechanism"),
    ];

    [Fact]
    public void Each_step_stands_to_the_right_of_what_it_lies_behind_and_open_lids_are_raised()
    {
        var lids = Lids(AccessTree.Svg(Steps, new HashSet<string> { "case", "mechanism" }).Value);
        Assert.Equal(["case", "panel", "mechanism", "capstan"], lids.Select(l => l.Step));
        Assert.Equal([1, 27, 27, 53], lids.Select(l => l.Left));
        Assert.Equal([true, false, true, false], lids.Select(l => l.Open));
    }

    [Fact]
    public void The_same_is_said_in_words() => Assert.Equal(
        "top cover: open; front & keys, behind top cover: shut; mechanism out, behind top cover: shut; flywheel bracket, behind mechanism out: shut",
        XElement.Parse(AccessTree.Svg(Steps, new HashSet<string> { "case" }).Value).Attribute("aria-label")!.Value);

    [Fact]
    public void Steps_behind_each_other_in_a_ring_or_behind_nothing_known_do_no_harm()
    {
        Assert.Equal("bottom: shut", AccessTree.Text([new("bottom", "bottom", 3, "never-written")], new HashSet<string>()));
        Assert.Equal("", AccessTree.Text([new("a", "a", 1, "b"), new("b", "b", 1, "a")], new HashSet<string>()));
        Assert.Equal("Nothing is known of how it opens", AccessTree.Text([], new HashSet<string>()));
    }

    private static List<(string Step, int Left, bool Open)> Lids(string svg) =>
        [.. XElement.Parse(svg).Elements("path").Where(p => p.Attribute("data-step") is not null)
            .Select(p => (p.Attribute("data-step")!.Value, int.Parse(p.Attribute("d")!.Value[1..].Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture), p.Attribute("class")!.Value.Contains("open", StringComparison.Ordinal)))];
}
