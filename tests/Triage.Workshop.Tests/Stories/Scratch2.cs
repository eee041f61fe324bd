using Triage.Workshop.Steps;
using Triage.Workshop.Answers;
using Triage.Workshop.Translating;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Planning;
using Triage.Notes.Kinds;
using Xunit;
namespace Triage.Workshop.Tests.Stories;
public class Scratch2
{
    [Fact]
    public async Task Times()
    {
        var o = TestContext.Current.TestOutputHelper!;
        var sw = System.Diagnostics.Stopwatch.StartNew();
        await using var bench = DemoBench.Open();
        o.WriteLine($"open {sw.ElapsedMilliseconds} ms");
        for (int i = 0; i < 3; i++)
        {
            sw.Restart();
            var a = bench.Live.Steps.Ask("Pellwick S-40", "power lamp lit, nothing on the display, no sound");
            o.WriteLine($"ask {sw.ElapsedMilliseconds} ms; {string.Join("; ", a.Recognition.Findings.Select(f => f.Finding + "=" + f.Value))} not: {string.Join("; ", a.Recognition.NotUnderstood.Select(f => f.Words))}");
            var job = a.Job!;
            var b = bench.Live.Current;
            var an = new Answering(b);
            sw.Restart(); var scope = an.ScopeOf(job)!; o.WriteLine($" scope {sw.Elapsed.TotalMilliseconds:0.0}");
            sw.Restart(); var r = an.Reason(job, scope, b.Learned); o.WriteLine($" reason {sw.Elapsed.TotalMilliseconds:0.0} roots {r.Network.Network.Roots.Length} states {r.Network.Network.Roots.Max(x => x.States.Length)} findings {r.Network.Network.Findings.Length}");
            sw.Restart(); var post = PosteriorInference.Of(r.Network.Network, r.Evidence.Evidence); o.WriteLine($" posterior {sw.Elapsed.TotalMilliseconds:0.0}");
            sw.Restart(); var h = Hypotheses.Of(r.Network.Network, r.Evidence.Evidence); o.WriteLine($" hypotheses {sw.Elapsed.TotalMilliseconds:0.0} {h.Listed.Length} left {h.LeftOut:E2}");
            sw.Restart(); WeightOfEvidence.Of(r.Network.Network, r.Evidence.Evidence); o.WriteLine($" woe {sw.Elapsed.TotalMilliseconds:0.0}");
            sw.Restart(); CredibleIntervals.Of(r.Network.Network, r.Evidence.Evidence); o.WriteLine($" intervals {sw.Elapsed.TotalMilliseconds:0.0}");
            sw.Restart(); var p = new ProblemFromJob(r.Network, r.Actions, job, r.Evidence, b.Settings).Of(h); o.WriteLine($" problem {sw.Elapsed.TotalMilliseconds:0.0} options {p.Options.Length}");
            foreach (var nodes in new[] { 1, 200_000, 2_000_000, 20_000_000 })
            {
                sw.Restart(); var ad = NextStep.Choose(p, new(nodes)); o.WriteLine($" plan {nodes} {sw.Elapsed.TotalMilliseconds:0.0} used {ad.NodesUsed} {ad.Best.Option.Id} {ad.Best.ExpectedCost:0.00} {ad.Ranked[1].Option.Id}");
            }
        }
    }
}
