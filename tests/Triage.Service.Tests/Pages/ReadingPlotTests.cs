using System.Globalization;
using System.Xml.Linq;
using Triage.Measurements.Instruments;
using Triage.Measurements.Quantities;
using Triage.Measurements.Readings;
using Triage.Service.Shown.Pictures;
using Xunit;

namespace Triage.Service.Tests.Pages;

/// <summary>Where a reading lies, against where a part in each state reads.</summary>
public class ReadingPlotTests
{
    /// <summary>Preferred values lie evenly on a logarithmic scale (IEC 60063: E6 rises by the sixth root of ten, rounded to two digits).</summary>
    [Fact]
    public void Preferred_values_lie_evenly_where_values_run_over_decades()
    {
        var scale = PlotScale.Of(Unit.Ohm, [(1, 100)], null);
        double[] series = [1, 1.5, 2.2, 3.3, 4.7, 6.8, 10];
        var steps = series.Zip(series.Skip(1), (one, next) => (scale.At(next) - scale.At(one)) / (scale.At(10) - scale.At(1))).ToList();
        Assert.All(steps, step => Assert.Equal(1 / 6.0, step, 0.015));
    }

    [Fact]
    public void Volts_lie_as_on_a_ruler()
    {
        var scale = PlotScale.Of(Unit.Volt, [(4.75, 5.25), (0, 1)], 3);
        Assert.Equal(scale.At(3) - scale.At(2), scale.At(5) - scale.At(4), 1e-12);
        Assert.True(scale.At(0) > 0 && scale.At(5.25) < 1);
    }

    [Fact]
    public void The_line_crosses_the_bar_of_the_state_it_speaks_for()
    {
        var svg = Drawn(MeasuredValue.Of(12, Unit.Ohm));
        Assert.True(Inside(svg, "shorted"));
        Assert.False(Inside(svg, "good"));
        Assert.Equal("Reads 12 Ω; good 1 kΩ to 100 MΩ; shorted 0 Ω to 20 Ω", svg.Attribute("aria-label")!.Value);
    }

    [Fact]
    public void Over_range_stands_at_the_right_edge() => Assert.Equal(319, Needle(Drawn(MeasuredValue.OverRange())));

    /// <summary>A mode that reads as a good part does tells nothing, and a bar of its own would look as if it did.</summary>
    [Fact]
    public void A_mode_that_reads_as_good_has_no_bar() =>
        Assert.Equal(["good", "shorted"], Drawn(MeasuredValue.Of(50_000, Unit.Ohm)).Elements("rect").Select(r => (string?)r.Attribute("data-state")).OfType<string>());

    [Fact]
    public void Without_ranges_nothing_is_drawn() =>
        Assert.Null(ReadingPlot.Svg(new() { Reading = new("C14", null, ReadingMode.Resistance, MeasuredValue.Of(12, Unit.Ohm)), Words = "" }));

    private static XElement Drawn(MeasuredValue value) => XElement.Parse(ReadingPlot.Svg(new()
    {
        Reading = new("C14", null, ReadingMode.Resistance, value),
        Good = new(1e3, 1e8, Unit.Ohm, ExpectedBy.Rating),
        States = [new("good", "good", 1e3, 1e8, 0.1), new("shorted", "shorted", 0, 20, 1), new("dry", "dried out", 1e3, 1e8, 0.1)],
        Words = "",
    })!.Value.Value);

    private static bool Inside(XElement svg, string state)
    {
        var bar = svg.Elements("rect").Single(r => (string?)r.Attribute("data-state") == state);
        return Number(bar, "x") <= Needle(svg) && Needle(svg) <= Number(bar, "x") + Number(bar, "width");
    }

    private static double Needle(XElement svg) =>
        double.Parse(svg.Elements("path").First().Attribute("d")!.Value[1..].Split(' ')[0], CultureInfo.InvariantCulture);

    private static double Number(XElement of, string name) => double.Parse(of.Attribute(name)!.Value, CultureInfo.InvariantCulture);
}
