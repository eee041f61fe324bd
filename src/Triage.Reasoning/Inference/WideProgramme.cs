namespace Triage.Reasoning.Inference;

/// <summary>
/// The programme of <see cref="ExplanationProgramme"/> in numbers with an exponent of their own: slower by two orders of magnitude,
/// for evidence so unlikely that doubles take it for impossible.
/// </summary>
internal sealed class WideProgramme
{
    private readonly CompiledNetwork _network;
    private readonly IReadOnlyList<Step> _steps;

    private WideProgramme(CompiledNetwork network, ExplanationPlan plan) => (_network, _steps) = (network, plan.Steps);

    /// <summary>The posterior of every course; none when the evidence is impossible.</summary>
    public static CoursePosterior Run(CompiledNetwork network, ExplanationPlan plan) => new WideProgramme(network, plan).Run();

    private CoursePosterior Run()
    {
        var before = new Wide[_steps.Count + 1][];
        before[0] = [Wide.One];
        for (var i = 0; i < _steps.Count; i++)
        {
            before[i + 1] = Forward(_steps[i], before[i]);
        }

        var total = before[^1][0];
        return total.IsZero ? new(double.NegativeInfinity, [], 0) : new(total.Log, Backward(before), 0);
    }

    private Wide[] Forward(Step step, Wide[] from)
    {
        var to = new Wide[step.Kind switch { StepKind.Open => 2 * from.Length, StepKind.Close => from.Length / 2, _ => from.Length }];
        for (var m = 0; m < from.Length; m++)
        {
            switch (step.Kind)
            {
                case StepKind.Open:
                    to[Insert(m, step.Position)] = from[m] * Wide.Of(_network.Bits[step.Index].LeakQ);
                    to[Insert(m, step.Position) | 1 << step.Position] = from[m] * Wide.Of(_network.Bits[step.Index].LeakP);
                    break;
                case StepKind.Close:
                    to[Remove(m, step.Position)] += Has(m, step.Position) ? from[m] : default;
                    break;
                case StepKind.Root:
                    foreach (var course in _network.Roots[step.Index].Courses)
                    {
                        Move(step, course, m, (target, weight) => to[target] += from[m] * weight);
                    }

                    break;
            }
        }

        return to;
    }

    private double[][] Backward(Wide[][] before)
    {
        var posterior = new double[_network.Roots.Length][];
        Wide[] after = [Wide.One];
        for (var i = _steps.Count - 1; i >= 0; i--)
        {
            var (step, vector) = (_steps[i], new Wide[before[i].Length]);
            var weights = step.Kind == StepKind.Root ? new Wide[_network.Roots[step.Index].Courses.Length] : [];
            for (var m = 0; m < vector.Length; m++)
            {
                switch (step.Kind)
                {
                    case StepKind.Open:
                        vector[m] = after[Insert(m, step.Position)] * Wide.Of(_network.Bits[step.Index].LeakQ)
                            + after[Insert(m, step.Position) | 1 << step.Position] * Wide.Of(_network.Bits[step.Index].LeakP);
                        break;
                    case StepKind.Close:
                        vector[m] = Has(m, step.Position) ? after[Remove(m, step.Position)] : default;
                        break;
                    case StepKind.Root:
                        for (var c = 0; c < weights.Length; c++)
                        {
                            var sum = default(Wide);
                            Move(step, _network.Roots[step.Index].Courses[c], m, (target, weight) => sum += weight * after[target]);
                            vector[m] += sum;
                            weights[c] += before[i][m] * sum;
                        }

                        break;
                }
            }

            if (step.Kind == StepKind.Root)
            {
                var all = weights.Aggregate((a, b) => a + b);
                posterior[step.Index] = [.. weights.Select(w => Wide.Ratio(w, all))];
            }

            after = vector;
        }

        return posterior;
    }

    /// <summary>Where a course takes a mask, with its weight: each effect either explains its bit or does not.</summary>
    private static void Move(Step step, Course course, int mask, Action<int, Wide> to)
    {
        Next(0, mask, Wide.OfLog(course.LogWeight));

        void Next(int e, int m, Wide weight)
        {
            if (weight.IsZero)
            {
                return;
            }

            if (e == course.Effects.Length)
            {
                to(m, weight);
                return;
            }

            var position = Array.IndexOf(step.Open, course.Effects[e].Bit);
            if (Has(m, position))
            {
                Next(e + 1, m, weight);
                return;
            }

            Next(e + 1, m | 1 << position, weight * Wide.Of(course.Effects[e].P));
            Next(e + 1, m, weight * Wide.Of(course.Effects[e].Q));
        }
    }

    private static bool Has(int mask, int position) => (mask >> position & 1) == 1;

    private static int Insert(int mask, int position) => mask >> position << (position + 1) | mask & (1 << position) - 1;

    private static int Remove(int mask, int position) => mask >> (position + 1) << position | mask & (1 << position) - 1;
}
