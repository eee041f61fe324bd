namespace Triage.Reasoning.Inference;

/// <summary>
/// A certain bit goes without saying when every course that explains some other certain bit explains it too: "still faulty"
/// after the second fix says the same of the first, and that something is wrong at all.
/// </summary>
internal static class ImpliedBits
{
    public static CompiledNetwork Drop(CompiledNetwork network)
    {
        var certain = Enumerable.Range(0, network.Bits.Length).Where(b => network.Bits[b].Certain).ToList();
        if (certain.Count < 2)
        {
            return network;
        }

        var explainedBy = certain.ToDictionary(b => b, _ => new HashSet<(int, int)>());
        Visit(network, (at, effect) =>
        {
            if (explainedBy.TryGetValue(effect.Bit, out var courses))
            {
                courses.Add(at);
            }
        });
        var kept = certain.ToList();
        foreach (var bit in certain)
        {
            if (kept.Any(other => other != bit && explainedBy[other].IsSubsetOf(explainedBy[bit])))
            {
                kept.Remove(bit);
            }
        }

        return Keep(network, [.. Enumerable.Range(0, network.Bits.Length).Where(b => !network.Bits[b].Certain || kept.Contains(b))]);
    }

    private static void Visit(CompiledNetwork network, Action<(int Root, int Course), Effect> visit)
    {
        for (var r = 0; r < network.Roots.Length; r++)
        {
            for (var c = 0; c < network.Roots[r].Courses.Length; c++)
            {
                foreach (var effect in network.Roots[r].Courses[c].Effects)
                {
                    visit((r, c), effect);
                }
            }
        }
    }

    private static CompiledNetwork Keep(CompiledNetwork network, int[] kept)
    {
        var renumbered = Enumerable.Range(0, network.Bits.Length).Select(b => Array.IndexOf(kept, b)).ToArray();
        return new CompiledNetwork
        {
            Roots =
            [
                .. network.Roots.Select(root => new CompiledRoot(
                [
                    .. root.Courses.Select(course => course with
                    {
                        Effects = [.. course.Effects.Where(e => renumbered[e.Bit] >= 0).Select(e => e with { Bit = renumbered[e.Bit] })],
                    }),
                ])),
            ],
            Bits = [.. kept.Select(b => network.Bits[b])],
            Nominals = network.Nominals,
            LogConstant = network.LogConstant,
            LogAllGood = network.LogAllGood,
        };
    }
}
