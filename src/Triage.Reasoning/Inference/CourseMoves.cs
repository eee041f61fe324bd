namespace Triage.Reasoning.Inference;

/// <summary>What a step of the plan does to a vector over masks, forward and backward.</summary>
internal sealed class CourseMoves(CompiledNetwork network)
{
    private double[] _scratch = [];

    /// <summary>Σ over the root's courses, masks moved forward.</summary>
    public void Forward(Step step, ReadOnlySpan<double> from, Span<double> to)
    {
        to.Clear();
        foreach (var course in network.Roots[step.Index].Courses)
        {
            if (course.Weight > 0)
            {
                Forward(Blocks.Of(step, course, network), course.Weight, from, to);
            }
        }
    }

    /// <summary>Any step backward; returns the log of the scale taken out.</summary>
    public double Backward(Step step, ReadOnlySpan<double> after, Span<double> before)
    {
        switch (step.Kind)
        {
            case StepKind.Open:
                BitVector.Close(after, before, step.Position, network.Bits[step.Index].LeakQ, network.Bits[step.Index].LeakP);
                return BitVector.Normalise(before);
            case StepKind.Close:
                BitVector.Open(after, before, step.Position, 0, 1);
                return 0;
            default:
                var courses = network.Roots[step.Index].Courses;
                for (var c = 0; c < courses.Length; c++)
                {
                    Backward(step, courses[c], [], after, before);
                }

                return 0;
        }
    }

    /// <summary>One course backward, added to what is before; returns its weight where the roots so far are given, 0 where they are not.</summary>
    public double Backward(Step step, Course course, ReadOnlySpan<double> soFar, ReadOnlySpan<double> after, Span<double> before)
    {
        if (course.Weight <= 0)
        {
            return 0;
        }

        var block = Blocks.Of(step, course, network);
        var weight = 0.0;
        foreach (var target in block.Targets())
        {
            var moved = Scratch(block.Size);
            block.In(after, target).CopyTo(moved);
            foreach (var (position, effect) in block.Uncertain)
            {
                BitVector.ExpectExplained(moved, position, effect.Q, effect.P);
            }

            foreach (var source in block.Sources(target))
            {
                BitVector.AddScaled(block.In(before, source), moved, course.Weight);
                weight += soFar.Length > 0 ? course.Weight * BitVector.Dot(block.In(soFar, source), moved) : 0;
            }
        }

        return weight;
    }

    private void Forward(Blocks block, double weight, ReadOnlySpan<double> from, Span<double> to)
    {
        foreach (var target in block.Targets())
        {
            if (block.Uncertain.Length == 0)
            {
                foreach (var source in block.Sources(target))
                {
                    BitVector.AddScaled(block.In(to, target), block.In(from, source), weight);
                }

                continue;
            }

            var moved = Scratch(block.Size);
            moved.Clear();
            foreach (var source in block.Sources(target))
            {
                BitVector.AddScaled(moved, block.In(from, source), weight);
            }

            foreach (var (position, effect) in block.Uncertain)
            {
                BitVector.Explain(moved, position, effect.Q, effect.P);
            }

            BitVector.AddScaled(block.In(to, target), moved, 1);
        }
    }

    private Span<double> Scratch(int size)
    {
        if (_scratch.Length < size)
        {
            _scratch = new double[size];
        }

        return _scratch.AsSpan(0, size);
    }
}
