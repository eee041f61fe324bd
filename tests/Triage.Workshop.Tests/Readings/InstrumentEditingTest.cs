using Triage.Measurements.Readings;
using Triage.Notes.Kinds;
using Triage.Workshop.Knowledge;
using Triage.Workshop.Readings;
using Xunit;

namespace Triage.Workshop.Tests.Readings;

/// <summary>An instrument is typed off its sheet, kept in the book, and readings are judged with it from then on.</summary>
public sealed class InstrumentEditingTest
{
    private static readonly TypedInstrument Needle = new("needle meter")
    {
        Kind = "multimeter", Input = "20 k", Burden = "0,5 V", Cannot = ["farads", "esr"],
        Ranges = ["dc volts 10 V, step 100 mV, 3 % + 1", "dc-amps 250 mA, step 5 mA, ±3 %"],
    };

    /// <summary>Ohm's law: a 20 kΩ meter on 5 V behind 20 kΩ shows 2.5 V.</summary>
    [Fact]
    public async Task What_was_typed_is_kept_among_the_rest_and_reckoned_with()
    {
        await using var bench = Open("value-of-hour: 14 # ours\n");
        Assert.Null(bench.Live.Instruments.Keep(bench.Live.Setup.Version, null, Needle));
        var kept = Assert.Single(bench.Live.Current.Settings.Instruments);
        Assert.Equal(("multimeter", 20e3, 0.5), (kept.Kind, kept.InputOhms, kept.BurdenVolts));
        Assert.Equal([ReadingMode.Capacitance, ReadingMode.SeriesResistance], kept.Cannot);
        Assert.Equal([(10, 0.1, 3, 1), (0.25, 0.005, 3, 0)], kept.Ranges.Select(r => (r.FullScale, r.Resolution, r.Percent, r.Counts)));
        Assert.StartsWith("value-of-hour: 14 # ours\n", File.ReadAllText(bench.Live.Setup.File!), StringComparison.Ordinal);

        Assert.Contains("as a good one (2.38 V … 2.62 V)", Judged(bench, "dc-volts", "2.5 V").Words, StringComparison.Ordinal);
        Assert.Contains("needle meter does not measure farads", Judged(bench, "farads", "90 mF").NotUsed, StringComparison.Ordinal);
    }

    [Fact]
    public async Task It_is_changed_and_taken_away_by_its_name()
    {
        await using var bench = Open("currency: kr\n");
        Assert.Null(bench.Live.Instruments.Keep(bench.Live.Setup.Version, null, Needle));
        Assert.NotNull(bench.Live.Instruments.Keep(bench.Live.Setup.Version, null, Needle));
        Assert.Null(bench.Live.Instruments.Keep(bench.Live.Setup.Version, null, Needle with { Name = "second" }));
        Assert.Null(bench.Live.Instruments.Keep(bench.Live.Setup.Version, "second", Needle with { Name = "tester", Ranges = [] }));
        Assert.Equal(["needle meter", "tester"], bench.Live.Current.Settings.Instruments.Select(i => i.Name));
        Assert.Null(bench.Live.Instruments.Remove(bench.Live.Setup.Version, "needle meter"));
        Assert.Equal("tester", Assert.Single(bench.Live.Current.Settings.Instruments).Name);
    }

    [Theory]
    [InlineData("dc-volts up to a lot", "Line 1 of the accuracy, “dc-volts up to a lot”, is no range.")]
    [InlineData("dc-volts 20 R, step 10 mV, 1 % + 2", "\"20 R\" is in Ω where V is expected.")]
    [InlineData("dc-volts 0 V, step 10 mV, 1 % + 2", "`to` should be a number")]
    public async Task A_line_that_is_no_range_is_named_and_nothing_is_written(string line, string what)
    {
        await using var bench = Open("currency: kr\n");
        var refused = bench.Live.Instruments.Keep(bench.Live.Setup.Version, null, Needle with { Ranges = [line] });
        Assert.StartsWith(what, refused!.What, StringComparison.Ordinal);
        Assert.Equal("currency: kr\n", File.ReadAllText(bench.Live.Setup.File!));
    }

    [Fact]
    public async Task A_form_made_before_somebody_else_s_change_is_told()
    {
        await using var bench = Open("currency: kr\n");
        var version = bench.Live.Setup.Version;
        Assert.Null(bench.Live.Instruments.Keep(version, null, Needle));
        Assert.Contains("changed by somebody else", bench.Live.Instruments.Remove(version, Needle.Name)!.What, StringComparison.Ordinal);
    }

    /// <summary>A sheet's line written from a range reads back as the same range.</summary>
    [Fact]
    public async Task The_form_shows_what_would_be_kept_again()
    {
        await using var bench = Open("currency: kr\n");
        Assert.Null(bench.Live.Instruments.Keep(bench.Live.Setup.Version, null, Needle));
        var before = bench.Live.Current.Settings.Instruments[0].Ranges;
        Assert.Null(bench.Live.Instruments.Keep(bench.Live.Setup.Version, Needle.Name, Needle with { Ranges = [.. before.Select(RangeLine.Of)] }));
        Assert.Equal(before, bench.Live.Current.Settings.Instruments[0].Ranges.AsEnumerable());
    }

    private static ReadingVerdict Judged(DemoBench bench, string mode, string value)
    {
        var steps = bench.Live.Steps;
        var id = steps.TakeIn(new() { Machine = "Corvane K-61", Complaint = "no sound" }).Job!.Id;
        var job = steps.Reading(id, new(default, "x") { From = "IC9 out", To = "ground", Mode = mode, Value = value, Power = mode == "farads" ? "off, drained" : "full", Instrument = Needle.Name }).Job!;
        return bench.Live.Current.VerdictOn(job, job.Log.OfType<Read>().Last())!;
    }

    private static DemoBench Open(string settings) => DemoBench.Open(prepare: folder =>
    {
        File.WriteAllText(Path.Combine(folder, "demo", "bench.yaml"), settings);
        var device = Path.Combine(folder, "demo", "devices", "corvane-k61.md");
        File.WriteAllText(device, File.ReadAllText(device).Replace("rating: \"5 V 1 A\"", "rating: \"5 V behind 20 k\"", StringComparison.Ordinal));
    });
}
