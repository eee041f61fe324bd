using Triage.Benchmarks;
using Triage.Reasoning.Inference;

var large = Enumerable.Range(0, 60).Select(Case.Large).ToArray();
foreach (var rep in new[] { 1 })
{
    var ms = Measure.Each(large, c => PosteriorInference.Of(c.Network, c.Evidence), 5);
    Console.WriteLine($"posterior best-of-5 p50 {Measure.Median(ms):F2} p99 {Measure.Quantile(ms, .99):F2}");
    var check = Measure.Each(large, c => InputCheck.Require(c.Network, c.Evidence), 5);
    Console.WriteLine($"  check p50 {Measure.Median(check):F2}");
    var comp = Measure.Each(large, c => EvidenceCompiler.Compile(c.Network, c.Evidence), 5);
    Console.WriteLine($"  compile p50 {Measure.Median(comp):F2}");
    var compiled = large.Select(c => EvidenceCompiler.Compile(c.Network, c.Evidence)).ToArray();
    var plan = Measure.Each(compiled, c => ExplanationPlan.Of(c), 5);
    Console.WriteLine($"  plan p50 {Measure.Median(plan):F2}");
    var run = Measure.Each(compiled, c => CourseInference.Of(c), 5);
    Console.WriteLine($"  infer p50 {Measure.Median(run):F2} p99 {Measure.Quantile(run, .99):F2}");
}
foreach (var (most, bound) in new[] { (400, 1e-4), (2000, 1e-6) })
{
    var left = new List<double>();
    var ms = Measure.Each(large, c => left.Add(Hypotheses.Of(c.Network, c.Evidence, most, bound).LeftOut));
    Console.WriteLine($"hypotheses {most} p50 {Measure.Median(ms):F2} p99 {Measure.Quantile(ms, .99):F2} left p50 {Measure.Median(left):E1} max {left.Max():E1}");
}
foreach (var sim in new[] { true, false })
{
    var linked = Enumerable.Range(0, 30).Select(s => Case.Linked(s, sim)).ToArray();
    var left = new List<double>();
    var ms = Measure.Each(linked, c => { var h = Hypotheses.Of(c.Network, c.Evidence); left.Add(h.LeftOut); });
    Console.WriteLine($"linked sim={sim} p50 {Measure.Median(ms):F2} max {ms.Max():F2} left p50 {Measure.Median(left):E1} max {left.Max():E1}");
    foreach (var c in linked.Take(6)) {
        var compiled = EvidenceCompiler.Compile(c.Network, c.Evidence);
        var plan = ExplanationPlan.Of(compiled);
        foreach (var w in new[] { 1000, 10000, 100000 }) { 
            var t = Environment.CpuUsage.UserTime;
            var f = CourseSearch.Run(compiled, plan, new(w, 1e-6));
            Console.WriteLine($"   work {w} found {f.Mass:E2} left {f.LeftOut / (f.Mass + f.LeftOut):E2} leaves {f.Leaves.Length} top {string.Join(" ", f.Leaves.Take(3).Select(l => $"{l.Mass / f.Mass:F3}/{l.Faults.Count()}"))} 2000: {f.Leaves.Take(2000).Sum(l => l.Mass) / f.Mass:F6} {(Environment.CpuUsage.UserTime - t).TotalMilliseconds:F1} ms");
        }
    }
    var pl = new List<double>();
    ms = Measure.Each(linked.Take(8).ToArray(), c => pl.Add(PosteriorInference.Of(c.Network, c.Evidence).LeftOut));
    Console.WriteLine($"linked posterior p50 {Measure.Median(ms):F2} left p50 {Measure.Median(pl):E1} max {pl.Max():E1}");
}
