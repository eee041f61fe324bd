using Triage.Workshop.Steps;
using Triage.Notes.Kinds;
using Xunit;
namespace Triage.Workshop.Tests.Stories;
public class Scratch
{
    [Fact]
    public async Task Look()
    {
        await using var bench = DemoBench.Open();
        var o = TestContext.Current.TestOutputHelper!;
        foreach (var p in bench.Live.Current.Problems.Take(20)) o.WriteLine(p.ToString());
        var sw = System.Diagnostics.Stopwatch.StartNew();
        var a = bench.Live.Steps.Ask("Pellwick S-40", "power lamp lit, nothing on the display, no sound");
        o.WriteLine($"ask {sw.ElapsedMilliseconds} ms"); sw.Restart();
        a = bench.Live.Steps.Ask("Pellwick S-40", "power lamp lit, nothing on the display, no sound");
        o.WriteLine($"ask {sw.ElapsedMilliseconds} ms");
        Print(a.Answer!, o);
        var job = bench.Live.Steps.TakeIn(new() { Machine = "Pellwick S-40", Complaint = "power lamp lit, nothing on the display, no sound" });
        o.WriteLine(job.Refused?.ToString() ?? job.Job!.Id);
        var id = job.Job!.Id;
        void Do(StepResult r) { if (r.Refused is not null) o.WriteLine("REFUSED " + r.Refused); Print(bench.Live.Current.AnswerFor(r.Job!).Answer!, o); }
        var s = bench.Live.Steps;
        Do(s.Agree(id, new(MayErase: true)));
        var reset = bench.Live.Current.AnswerFor(bench.Live.Current.Notes.Find<Job>(id)!).Answer!.Resets[0].Reset;
        Do(s.Reset(id, reset, Effect.Works));
        Do(s.Held(id, reset, false));
        Do(s.Tested(id, "look-for-leakage", "no"));
        Do(s.Tested(id, "ohms-across-backup", "flat-low"));
        Do(s.Tested(id, "ohms-across-backup-lifted", "flat-low"));
        Do(s.Fixed(id, "replace-backup-capacitor", Effect.Works, true));
        Do(s.Held(id, "replace-backup-capacitor", true, "soak"));
        var c = s.Close(id, new() { Outcome = JobOutcome.Mended, Causes = [new("backup-capacitor-shorted", Grade.Measured)] });
        o.WriteLine(c.Refused?.ToString() ?? "closed");
        foreach (var t in c.Taught) o.WriteLine(t.ToString());
        o.WriteLine(File.ReadAllText(Path.Combine(bench.Folder, "demo", c.Job!.Place.Path)));
    }

    private static void Print(Answers.Answer a, ITestOutputHelper o)
    {
        o.WriteLine("-----");
        foreach (var e in a.Evidence) o.WriteLine($"  e {e.Words} [{e.SaidAs}]");
        foreach (var e in a.Remarks) o.WriteLine($"  ! {e}");
        foreach (var c in a.Causes.Take(6)) o.WriteLine($"  {c.Probability:P1} ({c.Lower:P0}-{c.Upper:P0}) {c.Name}: {c.Why} [{string.Join("; ", c.Jobs.Select(j => $"{j.Job} {j.Without:P1}"))}]");
        foreach (var r in a.Resets.Take(3)) o.WriteLine($"  reset {r.Name} works {r.ChanceWorks:P0} holds {r.ChanceHolds:P0} blocked {r.Blocked} | before {string.Join("; ", r.Before)} | {string.Join(" / ", r.Steps)} | {r.Tells}");
        if (a.Next is { } n)
        {
            o.WriteLine($"  NEXT {n.Kind} {n.Id} {n.Name} price {n.Price:0.0} expected {n.ExpectedCost:0.0} opens [{string.Join(", ", n.Opens)}] {n.Why}");
            foreach (var x in n.Outcomes) o.WriteLine($"     {x.Name} {x.Chance:P0} {x.Then}");
            foreach (var x in n.Others) o.WriteLine($"     other {x.Id} {x.Price:0.0} {x.ExpectedCost:0.0}");
            foreach (var x in n.Forbidden.Take(5)) o.WriteLine($"     forbidden {x.Id}: {x.Why}");
        }
    }
}
