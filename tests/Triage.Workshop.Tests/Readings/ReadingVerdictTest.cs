using Triage.Measurements.Instruments;
using Triage.Measurements.Readings;
using Triage.Notes.Kinds;
using Xunit;

namespace Triage.Workshop.Tests.Readings;

/// <summary>What a single reading says, with the ranges beside it.</summary>
public sealed class ReadingVerdictTest(SharedDemo shared)
{
    [Theory]
    [InlineData("IC9 out", "5.02 V", "full", "5.02 V at IC9 out, power on: as a good one (4.75 V … 5.25 V), speaks against low or unsteady output (strong)")]
    [InlineData("IC9 out", "3.1 V", "full", "3.1 V at IC9 out, power on: below a good one (4.75 V … 5.25 V), speaks for low or unsteady output (strong)")]
    [InlineData("IC9 out", "0.02 V", "limited", "20 mV at IC9 out, power limited: below a good one (4.75 V … 5.25 V), speaks for no output (strong)")]
    [InlineData("IC9 in", "5.02 V", "full", "x: not weighed, say where on IC9 it was read: out, output, pin 3")]
    [InlineData("IC9 out", "0 V", "off", "x: not weighed, IC9 tells its voltage only with the power on; switch on (limited first) and read again")]
    public void A_regulators_output_in_words(string from, string value, string power, string words) =>
        Assert.Equal(words, Verdict("Corvane K-61", new(default, "x") { From = from, To = "ground", Mode = "dc-volts", Value = value, Power = power }).Words);

    [Theory]
    [InlineData("F1", "OL", "ohms", "OL across F1, power off and drained: over range (a good one reads 0 Ω … 2 Ω), speaks for blown (strong)")]
    [InlineData("F1", "0.3 R", "continuity", "300 mΩ across F1, power off and drained: as a good one (0 Ω … 2 Ω), speaks against blown (strong)")]
    [InlineData("Q2 b", "0.02 V", "diode", "20 mV at Q2 b-e, power off and drained: below a good one (400 mV … 800 mV), speaks for shorted, mostly collector to emitter (strong)")]
    [InlineData("C3", "3000 uF", "farads", "3 mF across C3, power off and drained, one leg lifted: below a good one (3.76 mF … 7.05 mF), speaks for dried out, capacity down and series resistance up (strong)")]
    public void Other_parts_in_words(string from, string value, string mode, string words)
    {
        var lifted = mode == "farads" ? ", one leg lifted" : "";
        Assert.Equal(words, Verdict("Ostrelle OM-54", new(default, "x") { From = from, To = mode == "diode" ? "Q2 e" : null, Mode = mode, Value = value, Power = "off, drained" + lifted }).Words);
    }

    /// <summary>Ohm's law: 10 MΩ across 1 MΩ shows 10/11 of the voltage, 9.1 % less.</summary>
    [Fact]
    public async Task A_source_of_1_MOhm_read_with_a_10_MOhm_meter_is_not_called_bad()
    {
        await using var bench = DemoBench.Open(prepare: folder => Edit(folder, "rating: \"5 V 1 A\"", "rating: \"5 V behind 1 M\""));
        var behind = Verdict(bench, "Corvane K-61", Output("4.55 V"));
        Assert.Equal("4.55 V at IC9 out, power on: as a good one (4.32 V … 4.77 V), speaks against low or unsteady output (strong)", behind.Words);
        Assert.Equal(1, behind.States.Single(s => s.State == "good").Likelihood);
        var stiff = Verdict("Corvane K-61", Output("4.55 V"));
        Assert.Contains("speaks for low or unsteady output", stiff.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void The_sister_channel_says_better_what_to_expect_than_the_rating()
    {
        var alone = Verdict("Corvane K-61", Output("6.1 V"));
        var beside = Verdict("Corvane K-61", Output("6.1 V"), sister: new(default, "IC10 out, sister of IC9: 6 V") { From = "IC10 out", Mode = "dc-volts", Value = "6 V", Power = "full" });
        Assert.Contains("speaks for", alone.Words, StringComparison.Ordinal);
        Assert.Equal(ExpectedBy.SisterChannel, beside.Good!.By);
        Assert.Equal((4.8, 7.2), (Math.Round(beside.Good.Low, 9), Math.Round(beside.Good.High, 9)));
        Assert.Contains("as a good one", beside.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Each_state_has_its_range_and_its_likelihood()
    {
        var verdict = Verdict("Corvane K-61", Output("3.1 V"));
        Assert.Equal(["good 4.75 5.25", "low 1 4.75", "dead 0 1", "high 5.5 20"], verdict.States.Select(s => FormattableString.Invariant($"{s.State} {s.Low:0.##} {s.High:0.##}")));
        Assert.Equal("low", verdict.States.MaxBy(s => s.Likelihood)!.State);
        Assert.Equal((ReadingMode.DcVolts, PowerState.On), (verdict.Reading!.Mode, verdict.Reading.Power));
        Assert.Null(verdict.NotUsed);
    }

    private static Read Output(string value) => new(default, "x") { From = "IC9 out", To = "ground", Mode = "dc-volts", Value = value, Power = "full" };

    private Workshop.Readings.ReadingVerdict Verdict(string machine, Read read, Read? sister = null) => Verdict(shared.Bench, machine, read, sister);

    private static Workshop.Readings.ReadingVerdict Verdict(DemoBench bench, string machine, Read read, Read? sister = null)
    {
        var id = bench.Live.Steps.TakeIn(new() { Machine = machine, Complaint = "no sound" }).Job!.Id;
        if (sister is not null)
            Assert.Null(bench.Live.Steps.Reading(id, sister).Refused);
        Assert.Null(bench.Live.Steps.Reading(id, read).Refused);
        var job = bench.Live.Current.Notes.Find<Job>(id)!;
        return bench.Live.Current.VerdictOn(job, job.Log.OfType<Read>().Last())!;
    }

    private static void Edit(string folder, string old, string now)
    {
        var path = Path.Combine(folder, "demo", "devices", "corvane-k61.md");
        var text = File.ReadAllText(path);
        Assert.Contains(old, text, StringComparison.Ordinal);
        File.WriteAllText(path, text.Replace(old, now, StringComparison.Ordinal));
    }
}
