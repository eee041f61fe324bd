namespace Triage.Reasoning.Inference;

/// <summary>
/// A vector over masks seen as blocks, one for each set of certain bits, which sit on top of the mask. A course that explains
/// the certain bits D adds up the blocks g with g | D = t into block t, and works on the uncertain bits within that block only.
/// </summary>
/// <param name="Size">Entries of a block.</param>
/// <param name="Count">Number of blocks.</param>
/// <param name="Certain">D, as a block number.</param>
/// <param name="Uncertain">The other effects of the course, with their positions in the mask.</param>
internal readonly record struct Blocks(int Size, int Count, int Certain, (int Position, Effect Effect)[] Uncertain)
{
    public static Blocks Of(Step step, Course course, CompiledNetwork network)
    {
        var local = step.Open.Count(b => !network.Bits[b].Certain);
        var certain = 0;
        var uncertain = new List<(int, Effect)>(course.Effects.Length);
        foreach (var effect in course.Effects)
        {
            var position = Array.IndexOf(step.Open, effect.Bit);
            if (position >= local)
            {
                certain |= 1 << (position - local);
            }
            else
            {
                uncertain.Add((position, effect));
            }
        }

        return new(1 << local, 1 << (step.Open.Length - local), certain, [.. uncertain]);
    }

    public IEnumerable<int> Targets()
    {
        for (var t = 0; t < Count; t++)
        {
            if ((t & Certain) == Certain)
            {
                yield return t;
            }
        }
    }

    public IEnumerable<int> Sources(int target)
    {
        for (var g = 0; g < Count; g++)
        {
            if ((g | Certain) == target)
            {
                yield return g;
            }
        }
    }

    public Span<double> In(Span<double> vector, int block) => vector.Slice(block * Size, Size);

    public ReadOnlySpan<double> In(ReadOnlySpan<double> vector, int block) => vector.Slice(block * Size, Size);
}
