using System.Collections.Immutable;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Inference;

/// <summary>Marginals of root states, summed from those of courses.</summary>
internal static class CourseMarginals
{
    /// <summary>At the start, given the evidence without some pieces; null when it is impossible.</summary>
    public static ImmutableArray<ImmutableArray<double>>? AtStart(Network network, Evidence evidence, ImmutableHashSet<EvidenceItem> without)
    {
        var compiled = EvidenceCompiler.Compile(network, evidence, without);
        var courses = CourseInference.Of(compiled);
        return courses.Courses.Length > 0 ? Sum(network, compiled, courses, c => c.State) : null;
    }

    /// <summary>Sums over the courses that count as the same state.</summary>
    public static ImmutableArray<ImmutableArray<double>> Sum(
        Network network, CompiledNetwork compiled, CoursePosterior posterior, Func<Course, int> stateOf)
    {
        var rows = network.Roots.Select(root => new double[root.Prior.Length]).ToArray();
        for (var r = 0; r < rows.Length; r++)
        {
            var courses = compiled.Roots[r].Courses;
            for (var c = 0; c < courses.Length; c++)
            {
                rows[r][stateOf(courses[c])] += posterior.Courses[r][c];
            }
        }

        return [.. rows.Select(ImmutableArray.Create)];
    }
}
