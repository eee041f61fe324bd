using System.Text.RegularExpressions;
using System.Xml.Linq;
using Triage.Service.Shown.Pictures;
using Xunit;

namespace Triage.Service.Tests.Pages;

/// <summary>What ISO/IEC 18004 fixes of every square code, whatever is in it.</summary>
public partial class JobCodeTests
{
    private const int Quiet = 4;

    private readonly XElement svg = XElement.Parse(JobCode.Svg(new("http://192.0.2.7:5080/jobs/2026-022"), "job 2026-022").Value);

    /// <summary>A version v has 17 + 4 v modules a side (7.3.1), and four modules of quiet around it (7.3.8).</summary>
    [Fact]
    public void A_side_has_the_modules_of_a_version_and_a_quiet_zone()
    {
        Assert.Equal(0, (Side - (2 * Quiet) - 17) % 4);
        Assert.All(Dark, m => Assert.True(Math.Min(m.X, m.Y) >= Quiet && Math.Max(m.X, m.Y) < Side - Quiet));
    }

    /// <summary>Three corners carry a dark ring of 7 × 7 around a light one around a dark 3 × 3 (7.3.2).</summary>
    [Fact]
    public void Three_corners_can_be_found()
    {
        foreach (var (left, top) in new[] { (Quiet, Quiet), (Side - Quiet - 7, Quiet), (Quiet, Side - Quiet - 7) })
        {
            for (var at = 0; at < 49; at++)
            {
                var ring = Math.Max(Math.Abs((at % 7) - 3), Math.Abs((at / 7) - 3));
                Assert.Equal(ring != 2, Dark.Contains((left + (at % 7), top + (at / 7))));
            }
        }
    }

    /// <summary>Between the corners dark and light alternate in row 6, dark first and last (7.3.4).</summary>
    [Fact]
    public void The_beat_between_the_corners_alternates() =>
        Assert.All(Enumerable.Range(8, Side - (2 * Quiet) - 16), x => Assert.Equal(x % 2 == 0, Dark.Contains((Quiet + x, Quiet + 6))));

    [Fact]
    public void It_says_what_it_opens() => Assert.Equal("Square code that opens job 2026-022", svg.Attribute("aria-label")!.Value);

    private int Side => int.Parse(svg.Attribute("viewBox")!.Value.Split(' ')[2], System.Globalization.CultureInfo.InvariantCulture);

    private HashSet<(int X, int Y)> Dark =>
        [.. Module.Matches(svg.Element("path")!.Attribute("d")!.Value).Select(m => (Number(m.Groups[1]), Number(m.Groups[2])))];

    private static int Number(Group group) => int.Parse(group.Value, System.Globalization.CultureInfo.InvariantCulture);

    [GeneratedRegex(@"M(\d+) (\d+)h1v1h-1z")]
    private static partial Regex Module { get; }
}
