using Triage.Measurements.Readings;
using Triage.Notes.Kinds;
using Xunit;

namespace Triage.Workshop.Tests.Readings;

/// <summary>Instruments are set up once, and readings are judged with them.</summary>
public sealed class InstrumentSettingsTest
{
    private const string Analogue = """
        instruments:
          - name: needle meter
            input: 20 k
            ranges:
              - {mode: dc-volts, to: 10 V, step: 100 mV, percent: 3, counts: 1}

        """;

    /// <summary>Ohm's law: a 20 kΩ meter on 5 V behind 20 kΩ shows 2.5 V; a 10 MΩ one would show 4.99 V.</summary>
    [Fact]
    public async Task A_meter_of_20_kOhm_is_reckoned_with()
    {
        await using var bench = Open(Analogue, "rating: \"5 V behind 20 k\"");
        Assert.Equal((20e3, 0.1), (bench.Live.Current.Settings.Instruments[0].InputOhms, Assert.Single(bench.Live.Current.Settings.Instruments[0].Ranges).Resolution));
        Assert.Contains("as a good one (2.38 V … 2.62 V)", Words(bench, "2.5 V", "the needle meter"), StringComparison.Ordinal);
        Assert.Contains("above a good one", Words(bench, "4.9 V", "the needle meter"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("instruments:\n  - {name: m, ranges: [{mode: dc-volts, to: 20 R, step: 10 mV}]}\n", "\"20 R\" is in Ω where V is expected.")]
    [InlineData("instruments:\n  - {name: m, ranges: [{mode: dcv, to: 20 V, step: 10 mV}]}\n", "`mode` cannot be `dcv`.")]
    [InlineData("instruments:\n  - {name: m, input: 0 R}\n", "`input` should be a number")]
    [InlineData("instruments:\n  - {ranges: []}\n", "`name` is missing.")]
    public async Task One_with_something_wrong_is_named_and_left_out(string settings, string problem)
    {
        await using var bench = Open(settings, "rating: \"5 V 1 A\"");
        Assert.Contains(bench.Live.Current.Problems, p => p.ToString().StartsWith("bench.yaml:", StringComparison.Ordinal) && p.What.StartsWith(problem, StringComparison.Ordinal));
        Assert.Empty(bench.Live.Current.Settings.Instruments);
    }

    private static DemoBench Open(string settings, string rating) => DemoBench.Open(prepare: folder =>
    {
        File.WriteAllText(Path.Combine(folder, "demo", "bench.yaml"), settings);
        var device = Path.Combine(folder, "demo", "devices", "corvane-k61.md");
        File.WriteAllText(device, File.ReadAllText(device).Replace("rating: \"5 V 1 A\"", rating, StringComparison.Ordinal));
    });

    private static string Words(DemoBench bench, string value, string instrument)
    {
        var steps = bench.Live.Steps;
        var id = steps.TakeIn(new() { Machine = "Corvane K-61", Complaint = "no sound" }).Job!.Id;
        var job = steps.Reading(id, new(default, "x") { From = "IC9 out", To = "ground", Mode = ReadingModeWords.Of(ReadingMode.DcVolts), Value = value, Power = "full", Instrument = instrument }).Job!;
        return bench.Live.Current.VerdictOn(job, job.Log.OfType<Read>().Last())!.Words;
    }
}
