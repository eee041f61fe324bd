using Triage.Notes.Kinds;
using Triage.Workshop.Answers;
using Triage.Workshop.Model;
using Xunit;

namespace Triage.Workshop.Tests.Answers;

/// <summary>A bench that has mended many machines ranks the causes of others no worse than one that has mended none.</summary>
public sealed class LearningDoesNotHarmTest(SharedDemo shared)
{
    /// <summary>What owners say, and what it was.</summary>
    private static readonly (string Class, string Complaint, string Cause)[] Plain =
    [
        ("game-console", "the cartridge game does not start, only after it is pushed in again", "cartridge-contacts-tarnished"),
        ("game-console", "the stick drifts on its own", "stick-worn"),
        ("game-console", "the buttons of the pad hardly respond", "pad-contacts-worn"),
        ("pocket-computer", "segments missing on the display, pressing the frame brings them back", "display-heat-seal-lifted"),
        ("flat-display", "takes ages to start, clicks on and off", "display-supply-capacitors-dried"),
        ("flat-display", "vertical lines on the screen", "panel-bond-lifted"),
        ("picture-tube-display", "only a thin bright line across the middle", "field-output-dead"),
        ("power-adapter", "output comes and goes when the lead is wiggled", "adapter-lead-broken"),
        ("record-player", "records play too slow and waver", "platter-belt-slack"),
        ("record-player", "one channel is missing, comes back when the head shell is wiggled", "head-shell-contact-bad"),
        ("record-player", "hums loudly, the earth wire hangs loose", "earth-wire-off"),
        ("reel-recorder", "tape squeals and leaves brown dust on the heads", "tape-sticky"),
        ("camera-motor", "pictures far too bright, the shutter blades stick", "shutter-oily"),
        ("camera-motor", "light streaks on the pictures", "light-seal-perished"),
        ("clock-timer", "loses the time after every power cut", "clock-backup-flat"),
        ("clock-timer", "the alarm does not sound though it is set", "alarm-contact-dirty"),
        ("desktop-computer", "forgets the date and its settings when switched off", "backup-cell-flat"),
        ("desktop-computer", "shuts down after a few minutes when it gets hot", "processor-fan-stuck"),
    ];

    [Fact]
    public async Task On_classes_without_jobs_years_of_others_take_no_share_from_the_right_causes_of_plain_complaints_and_at_most_one_first_place()
    {
        await using var newcomer = DemoBench.Open(prepare: folder => Array.ForEach(Directory.GetFiles(Path.Combine(folder, "demo"), "*.md", SearchOption.AllDirectories), File.Delete));
        var veteran = shared.Bench;

        Assert.DoesNotContain(veteran.Live.Current.Knows.Counted.InOrder, job => Plain.Any(p => job.Levels.Contains(p.Class)));
        var before = Plain.Select(p => Place(newcomer, p)).ToList();
        var after = Plain.Select(p => Place(veteran, p)).ToList();

        foreach (var (p, i) in Plain.Select((p, i) => (p, i)))
            Say($"{p.Class}, {p.Complaint}: {p.Cause} in place {before[i].Place}, share {before[i].Share:P1}, after the jobs {after[i].Place}, {after[i].Share:P1}");
        Say($"right first {before.Count(b => b.Place == 1)} of {Plain.Length}, after the jobs {after.Count(a => a.Place == 1)}; mean −ln share {before.Average(b => -Math.Log(b.Share)):F3}, {after.Average(a => -Math.Log(a.Share)):F3}");
        Assert.True(after.Average(a => -Math.Log(a.Share)) <= before.Average(b => -Math.Log(b.Share)));
        // what the jobs tell of faults that these machines have too, and of what those show, may turn a close call
        Assert.True(after.Count(a => a.Place == 1) >= before.Count(b => b.Place == 1) - 1);
    }

    /// <summary>Of the true cause: where it stands after the complaint, and its share before anything is known.</summary>
    private static (int Place, double Share) Place(DemoBench bench, (string Class, string Complaint, string Cause) plain)
    {
        var known = bench.Live.Current.Knows;
        var job = bench.Live.Steps.TakeIn(new() { Machine = known.Notes.Find<DeviceClass>(plain.Class)!.Name, Complaint = plain.Complaint }).Job!;
        var scope = known.ScopeOf(job)!;
        var reasoned = new Answering(known).Reason(job, scope, known.Learned);
        var chance = reasoned.AtFirst(plain.Cause);
        return (1 + reasoned.Network.Faults.Keys.Count(fault => reasoned.AtFirst(fault) > chance), known.Learned.Shares(ScopesFromNotes.Of(scope), scope.Levels)[plain.Cause].Mean);
    }

    private static void Say(string text) => TestContext.Current.TestOutputHelper!.WriteLine(text);
}
