using Triage.Notes.Kinds;
using Xunit;

namespace Triage.Workshop.Tests.Answers;

/// <summary>A bench that has mended many machines ranks the causes of others no worse than one that has mended none.</summary>
public sealed class LearningDoesNotHarmTest
{
    /// <summary>What owners say, and what it was.</summary>
    private static readonly (string Class, string Complaint, string Cause)[] Plain =
    [
        ("drum-machine", "some of the pads are dead", "pads-worn"),
        ("game-console", "the cartridge game does not start, only after it is pushed in again", "cartridge-contacts-tarnished"),
        ("game-console", "the stick drifts on its own", "stick-worn"),
        ("pocket-computer", "segments missing on the display, pressing the frame brings them back", "display-heat-seal-lifted"),
        ("flat-display", "takes ages to start, clicks on and off", "display-supply-capacitors-dried"),
        ("picture-tube-display", "only a thin bright line across the middle", "field-output-dead"),
        ("power-adapter", "output comes and goes when the lead is wiggled", "adapter-lead-broken"),
        ("record-player", "records play too slow and waver", "platter-belt-slack"),
        ("reel-recorder", "tape squeals and leaves brown dust on the heads", "tape-sticky"),
        ("cassette-deck", "chews the tape", "takeup-idler-glazed"),
        ("radio-set", "crackles when the wave band switch is moved", "band-switch-dirty"),
        ("radio-set", "crackles when the volume is turned", "volume-control-dirty"),
        ("audio-amplifier", "one channel comes and goes, a burst of loud volume brings it back", "protection-relay-tarnished"),
        ("camera-motor", "pictures far too bright, the shutter blades stick", "shutter-oily"),
        ("clock-timer", "loses the time after every power cut", "clock-backup-flat"),
        ("desktop-computer", "forgets the date and its settings when switched off", "backup-cell-flat"),
        ("portable-computer", "the picture flickers when the lid is moved", "lid-cable-broken"),
        ("electronic-keyboard", "some keys make no sound", "key-contacts-dirty"),
    ];

    [Fact]
    public async Task Plain_complaints_have_the_right_cause_first_as_often_after_years_of_other_jobs()
    {
        await using var newcomer = DemoBench.Open(prepare: folder => Array.ForEach(Directory.GetFiles(Path.Combine(folder, "demo"), "*.md", SearchOption.AllDirectories), File.Delete));
        await using var veteran = DemoBench.Open();

        var before = Plain.Select(p => Place(newcomer, p)).ToList();
        var after = Plain.Select(p => Place(veteran, p)).ToList();

        foreach (var (p, i) in Plain.Select((p, i) => (p, i)))
            TestContext.Current.TestOutputHelper!.WriteLine($"{p.Class}, {p.Complaint}: {p.Cause} in place {before[i].Place} with {before[i].Chance:P0}, after the jobs {after[i].Place} with {after[i].Chance:P0}");
        TestContext.Current.TestOutputHelper!.WriteLine($"right first {before.Count(b => b.Place == 1)} of {Plain.Length}, after the jobs {after.Count(a => a.Place == 1)}; mean −ln chance {before.Average(Loss):F3}, {after.Average(Loss):F3}");
        Assert.True(after.Count(a => a.Place == 1) >= before.Count(b => b.Place == 1));
        Assert.True(after.Average(Loss) <= before.Average(Loss) + 0.1);
    }

    private static double Loss((int Place, double Chance) ranked) => -Math.Log(Math.Max(1e-6, ranked.Chance));

    private static (int Place, double Chance) Place(DemoBench bench, (string Class, string Complaint, string Cause) plain)
    {
        var kind = bench.Live.Current.Notes.Find<DeviceClass>(plain.Class)!;
        var causes = bench.Live.Steps.Ask(kind.Name, plain.Complaint).Answer!.Causes;
        var place = causes.ToList().FindIndex(c => c.Fault == plain.Cause);
        return (place < 0 ? 99 : place + 1, place < 0 ? 0 : causes[place].Probability);
    }
}
