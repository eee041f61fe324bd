using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Inference;

/// <summary>The evidence together with one fault and no other.</summary>
/// <param name="LogMass">ln P(evidence, this state, every other root good); negative infinity when impossible.</param>
/// <param name="Remains">P(the fault is still there after all actions | that), 0 … 1.</param>
public readonly record struct SingleFault(double LogMass, double Remains);

/// <summary>Weighs every fault as if it were the only one: with all other roots good, causes share nothing and nothing has to be summed.</summary>
public static class SingleFaults
{
    /// <summary>One for each candidate, in their order. Not conditioned on anything.</summary>
    /// <exception cref="ArgumentException">The network or the evidence does not make sense.</exception>
    public static SingleFault[] Of(Network network, Evidence evidence, IReadOnlyList<FaultyRoot> candidates)
    {
        InputCheck.Require(network, evidence);
        var compiled = EvidenceCompiler.Compile(network, evidence);
        double[] good = Array.ConvertAll(compiled.Roots, r => r.Courses[0].LogWeight);
        var (allGood, impossible) = (good.Where(double.IsFinite).Sum(), good.Count(double.IsNegativeInfinity));
        return [.. candidates.Select(c =>
        {
            var own = good[c.Root];
            var others = impossible > (double.IsFinite(own) ? 0 : 1) ? double.NegativeInfinity : allGood - (double.IsFinite(own) ? own : 0);
            return Only(compiled, c, compiled.LogConstant + others);
        })];
    }

    private static SingleFault Only(CompiledNetwork compiled, FaultyRoot fault, double logRest)
    {
        var courses = compiled.Roots[fault.Root].Courses.Where(c => c.State == fault.State).Select(c => (c.Remains, Log: LogWeight(compiled, c))).ToArray();
        var most = courses.Select(c => c.Log).DefaultIfEmpty(double.NegativeInfinity).Max();
        if (double.IsNegativeInfinity(most) || double.IsNegativeInfinity(logRest))
            return new(double.NegativeInfinity, 0);
        var all = courses.Sum(c => Math.Exp(c.Log - most));
        return new(logRest + most + Math.Log(all), courses.Where(c => c.Remains).Sum(c => Math.Exp(c.Log - most)) / all);
    }

    private static double LogWeight(CompiledNetwork compiled, Course course)
    {
        var log = course.LogWeight;
        for (var b = 0; b < compiled.Bits.Length; b++)
        {
            var bit = compiled.Bits[b];
            log += Math.Log(bit.LeakP + bit.LeakQ * course.Effects.Where(e => e.Bit == b).Sum(e => e.P));
        }

        for (var n = 0; n < compiled.Nominals.Length; n++)
            log += Math.Log(course.Picks.Where(p => p.Nominal == n).Select(p => p.Likelihood).DefaultIfEmpty(compiled.Nominals[n].Ambient).Average());
        return log;
    }
}
