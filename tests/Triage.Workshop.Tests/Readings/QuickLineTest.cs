using Triage.Notes.Kinds;
using Xunit;

namespace Triage.Workshop.Tests.Readings;

/// <summary>One line at eleven at night: kept as written, and beside it what it says with certainty.</summary>
public sealed class QuickLineTest(SharedDemo shared)
{
    private readonly DemoBench bench = shared.Bench;

    [Theory]
    [InlineData("C14 short, 47/16, plays")]
    [InlineData("IC3 pin 8 4.9V ok", "IC3 pin 8 | | dc-volts | 4.9 V")]
    [InlineData("IC9 b-e 0.02, shorted", "IC9 b | IC9 e | diode | 20 mV")]
    [InlineData("F1 open, T1A, fitted new, blows again")]
    [InlineData("belt gone to tar, new one, runs")]
    [InlineData("swapped C14 0.1/5.5, no difference", "swapped C14 with replace-backup-capacitor: NoChange")]
    [InlineData("12V rail reads 11.2 under load", "12 V rail | | dc-volts | 11.2 V")]
    [InlineData("C14 drained 2.1 ohm, 2.2 ohm after 30 s, 2.1 ohm leads reversed", "C14 | | ohms | 2.1 Ω", "C14 | | ohms | 2.2 Ω", "C14 | | ohms | 2.1 Ω")]
    [InlineData("swapped C7 470/25, no difference")]
    [InlineData("swapped C14, blew again")]
    [InlineData("IC3 pin 8 reads 4.9, C14 2 ohm")]
    [InlineData("\U0001F4A5 strange smell")]
    public void What_is_certain_becomes_entries_beside_the_line_as_written(string line, params string[] entries)
    {
        var id = bench.Live.Steps.TakeIn(new() { Machine = "Corvane K-61", Complaint = "no sound" }).Job!.Id;
        var before = Job(bench, id).Log.Length;

        var written = bench.Live.Steps.Line(id, line);

        Assert.Null(written.Refused);
        var added = Job(bench, id).Log[before..];
        Assert.Equal(line, Assert.IsType<QuickLine>(added[0]).Text);
        Assert.Equal(entries, added[1..].Select(InShort));
        Assert.Equal(entries.Length, written.Remarks.Count(r => r.StartsWith("Recorded", StringComparison.Ordinal)));
    }

    [Fact]
    public void Each_entry_is_taken_back_by_itself()
    {
        var id = bench.Live.Steps.TakeIn(new() { Machine = "Corvane K-61", Complaint = "no sound" }).Job!.Id;
        var before = Job(bench, id).Log.Length;
        bench.Live.Steps.Line(id, "C14 drained 2.1 ohm, 2.2 ohm after 30 s, 2.1 ohm leads reversed");
        Assert.Null(bench.Live.Steps.Undo(id, before + 2).Refused);
        Assert.Equal(["QuickLine", "Read", "Read"], Job(bench, id).Log[before..].Select(e => e.GetType().Name));
        Assert.Null(bench.Live.Steps.Undo(id, before).Refused);
        Assert.Equal(["2.1 Ω", "2.1 Ω"], Job(bench, id).Log[before..].Cast<Read>().Select(r => r.Value));
    }

    [Fact]
    public void Three_looks_in_one_line_are_judged_together()
    {
        var id = bench.Live.Steps.TakeIn(new() { Machine = "Corvane K-61", Complaint = "no sound" }).Job!.Id;
        var written = bench.Live.Steps.Line(id, "C14 one leg lifted drained 2.1 ohm, 2.2 ohm one leg lifted after 30 s, 2.1 ohm one leg lifted leads reversed");
        Assert.All(written.Remarks.Skip(1), r => Assert.Contains("one leg lifted: flat and low all three times with one leg lifted, speaks for shorted (strong)", r, StringComparison.Ordinal));
    }

    [Fact]
    public void On_a_machine_that_no_note_knows_readings_are_kept_all_the_same()
    {
        var id = bench.Live.Steps.TakeIn(new() { Machine = "a box", Complaint = "dead" }).Job!.Id;
        bench.Live.Steps.Line(id, "swapped C7 470/25, IC3 pin 8 4.9V");
        Assert.Equal(["QuickLine", "Read"], Job(bench, id).Log.TakeLast(2).Select(e => e.GetType().Name));
    }

    private static string InShort(LogEntry entry) => entry switch
    {
        Read r => $"{r.From} | {r.To}{(r.To is null ? "" : " ")}| {r.Mode} | {r.Value}",
        Swapped s => $"swapped {s.Part} with {s.Fix}: {s.Effect}",
        _ => entry.GetType().Name,
    };

    private static Job Job(DemoBench bench, string id) => bench.Live.Current.Notes.Find<Job>(id)!;
}
