using System.Globalization;
using System.Xml.Linq;
using Triage.Reasoning.Learning;
using Triage.Service.Shown.Pictures;
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

    [Fact]
    public void A_reliability_diagram_has_a_dot_where_each_bin_lies_and_says_the_same_in_words()
    {
        ReliabilityBin[] bins = [new(0.2, 0.4, 4, 0.3, 0.25, new(0.1, 0.6)), new(0.8, 1, 16, 0.9, 0.75, new(0.5, 0.9))];
        var svg = XElement.Parse(ReliabilityDiagram.Svg(bins).Value);
        var dots = svg.Elements("circle").ToList();
        Assert.Equal([("30", "75"), ("90", "25")], dots.Select(d => (d.Attribute("cx")!.Value, d.Attribute("cy")!.Value)));
        Assert.True(Radius(dots[0]) < Radius(dots[1]));
        Assert.Equal("M30 90V40", svg.Elements("path").First(p => (string?)p.Attribute("class") == "range").Attribute("d")!.Value);
        Assert.Equal("30 % sure, 25 % right of 4; 90 % sure, 75 % right of 16", svg.Attribute("aria-label")!.Value);
        Assert.Equal("No forecasts yet", XElement.Parse(ReliabilityDiagram.Svg([]).Value).Attribute("aria-label")!.Value);

        static double Radius(XElement dot) => double.Parse(dot.Attribute("r")!.Value, CultureInfo.InvariantCulture);
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
