using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Inference;

/// <summary>How the odds between two faults follow each number of the network, over the likeliest hypotheses.</summary>
internal sealed class FaultScores
{
    private readonly Dictionary<string, (Scores Scores, double Mass)> _of = [];
    private readonly Dictionary<Parameter, double> _variance = [];

    public FaultScores(Network network, Evidence evidence, bool now, int leaves, int work, double bound)
    {
        var compiled = EvidenceCompiler.Compile(network, evidence);
        var score = new HypothesisScore(network, evidence);
        var found = CourseSearch.Run(compiled, ExplanationPlan.Of(compiled), new(work, bound) { Wanted = leaves });
        foreach (var leaf in found.Leaves.Take(leaves))
        {
            var faults = leaf.Faults.Select(f => (f.Root, compiled.Roots[f.Root].Courses[f.Course].Events)).ToArray();
            var scores = score.Of(faults);
            foreach (var (parameter, variance) in scores.Parameters)
            {
                _variance[parameter] = variance;
            }

            foreach (var fault in faults.Where(f => !now || f.Events.Remains).SelectMany(f => network.Roots[f.Root].States[f.Events.State].Faults))
            {
                var (sum, mass) = _of.TryGetValue(fault, out var so) ? so : (new Scores(), 0);
                sum.Add(scores, leaf.Mass);
                _of[fault] = (sum, mass + leaf.Mass);
            }
        }
    }

    /// <summary>∂ log (odds of one fault to another) / ∂ logit θ, and the standard deviation of logit θ.</summary>
    public IEnumerable<(Parameter Parameter, double Deviation, double Slope)> Towards(string fault, string from)
    {
        if (!_of.TryGetValue(fault, out var to) || !_of.TryGetValue(from, out var first))
        {
            return [];
        }

        return _variance
            .Select(p => (p.Key, Math.Sqrt(p.Value), to.Scores[p.Key] / to.Mass - first.Scores[p.Key] / first.Mass))
            .Where(p => p.Item3 != 0);
    }
}
