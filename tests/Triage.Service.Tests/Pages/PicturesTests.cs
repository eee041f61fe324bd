using System.Globalization;
using System.Xml.Linq;
using Triage.Service.Pages.Pictures;
using Xunit;

namespace Triage.Service.Tests.Pages;

/// <summary>Pictures say in words what they draw, and draw what they say.</summary>
public class PicturesTests
{
    [Fact]
    public void A_bar_is_as_long_as_its_probability_and_its_line_spans_the_interval()
    {
        var svg = XElement.Parse(ProbabilityBar.Svg(0.31, 0.12, 0.5).Value);
        Assert.Equal("31", svg.Elements("rect").Single(r => (string?)r.Attribute("class") == "fill").Attribute("width")!.Value);
        Assert.StartsWith("M12 7H50M", svg.Element("path")!.Attribute("d")!.Value);
        Assert.Equal("31 %, 90 % interval 12 % to 50 %", svg.Attribute("aria-label")!.Value);
        Assert.Equal("img", svg.Attribute("role")!.Value);
    }

    [Theory]
    [InlineData(0, "0 %")]
    [InlineData(0.0004, "under 1 %")]
    [InlineData(0.01, "1 %")]
    [InlineData(0.994, "over 99 %")]
    [InlineData(1, "100 %")]
    public void Small_and_large_chances_claim_no_certainty(double probability, string words) => Assert.Equal(words, Percent.Of(probability));

    [Fact]
    public void A_change_is_drawn_before_above_after()
    {
        var svg = XElement.Parse(ChangeBar.Svg(0.2, 0.4).Value);
        var bars = svg.Elements("rect").Where(r => (string?)r.Attribute("class") != "track").ToList();
        Assert.Equal(["20", "40"], bars.Select(b => b.Attribute("width")!.Value));
        Assert.Null(bars[0].Attribute("y"));
        Assert.Equal("7", bars[1].Attribute("y")!.Value);
        Assert.Equal("before 20 %, after 40 %", svg.Attribute("aria-label")!.Value);
    }

    [Fact]
    public void An_interval_begins_at_its_lower_end()
    {
        var fill = XElement.Parse(IntervalBar.Svg(0.25, 0.75).Value).Elements("rect").Last();
        Assert.Equal(("25", "50"), (fill.Attribute("x")!.Value, fill.Attribute("width")!.Value));
    }

    /// <summary>A picture in which a comma stands for the decimal point is no picture.</summary>
    [Fact]
    public void The_machine_s_language_changes_nothing()
    {
        var usual = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo("") { NumberFormat = { NumberDecimalSeparator = "," } };
            Assert.Contains("width=\"12.5\"", ProbabilityBar.Svg(0.125, 0, 1).Value);
        }
        finally
        {
            CultureInfo.CurrentCulture = usual;
        }
    }
}
