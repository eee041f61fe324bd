namespace Triage.Reasoning.Inference;

/// <summary>Only what is possible at all: every positive number made the same moderate one, so that no underflow looks like a zero.</summary>
internal static class Support
{
    public static CompiledNetwork Of(CompiledNetwork network) => new()
    {
        Roots = [.. network.Roots.Select(root => new CompiledRoot([.. root.Courses.Select(Moderate)]))],
        Bits = [.. network.Bits.Select(b => b with { LeakQ = Sign(b.LeakQ), LeakP = Sign(b.LeakP) })],
        Nominals = [.. network.Nominals.Select(n => new NominalFactor(Sign(n.Ambient), Sign(n.Most)))],
        LogConstant = network.LogConstant,
        LogAllGood = network.LogAllGood,
    };

    private static Course Moderate(Course course) => new(
        course.Events,
        Math.Log(Sign(course.Weight)),
        [.. course.Effects.Select(e => e with { Q = Sign(e.Q), P = Sign(e.P) })],
        [.. course.Picks.Select(p => p with { Likelihood = Sign(p.Likelihood) })]);

    private static double Sign(double value) => value > 0 ? 0.5 : 0;
}
