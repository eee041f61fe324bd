using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Inference;

/// <summary>Standard deviation of the logit of a root's being in certain states, from the scores of the hypotheses found.</summary>
internal sealed class LogitSpread
{
    private readonly CompiledNetwork _compiled;
    private readonly FoundCourses _found;
    private readonly Scores[] _scores;
    private readonly Scores _all = new();
    private readonly Scores[][] _ofRoot;
    private readonly Dictionary<int, List<int>> _leavesOfRoot = [];
    private readonly int[] _position;

    public LogitSpread(Network network, Evidence evidence, CompiledNetwork compiled, FoundCourses found)
    {
        var score = new HypothesisScore(network, evidence);
        _compiled = compiled;
        _found = found;
        _position = new int[found.Order.Length];
        for (var i = 0; i < found.Order.Length; i++)
        {
            _position[found.Order[i]] = i;
        }

        _ofRoot = [.. compiled.Roots.Select((root, r) => root.Courses.Select(c => score.Of([(r, c.Events)])).ToArray())];
        _scores = [.. found.Leaves.Select(leaf => score.Of([.. leaf.Faults.Select(f => (f.Root, compiled.Roots[f.Root].Courses[f.Course].Events))]))];
        for (var i = 0; i < _scores.Length; i++)
        {
            _all.Add(_scores[i], found.Leaves[i].Mass);
            foreach (var (_, root, _) in found.Leaves[i].Faults)
            {
                (_leavesOfRoot.TryGetValue(root, out var leaves) ? leaves : _leavesOfRoot[root] = []).Add(i);
            }
        }
    }

    /// <param name="counts">Which (root, state) make the statement true.</param>
    /// <param name="root">The root that it speaks of.</param>
    public double Of(Func<int, int, bool> counts, int root)
    {
        // in no hypothesis found: what its own numbers leave open is the least that can be said
        var own = !_leavesOfRoot.ContainsKey(root);
        return Math.Sqrt(own ? OwnVariance(counts, root) : Variance(counts, root));
    }

    private double Variance(Func<int, int, bool> counts, int root)
    {
        var (good, inside) = (counts(root, 0), new Scores());
        var mass = 0.0;
        foreach (var i in _leavesOfRoot.GetValueOrDefault(root, []))
        {
            var course = _found.Leaves[i].Faults.First(f => f.Root == root).Course;
            if (counts(root, _compiled.Roots[root].Courses[course].State) != good)
            {
                inside.Add(_scores[i], _found.Leaves[i].Mass);
                mass += _found.Leaves[i].Mass;
            }
        }

        return mass > 0 ? Scores.VarianceOfDifference(inside, mass, _all, _found.Mass) : OwnVariance(counts, root);
    }

    private double OwnVariance(Func<int, int, bool> counts, int root)
    {
        var (inside, all) = (new Scores(), new Scores());
        var (mass, total) = (0.0, 0.0);
        var courses = _compiled.Roots[root].Courses;
        for (var c = 0; c < courses.Length; c++)
        {
            all.Add(_ofRoot[root][c], courses[c].Weight);
            total += courses[c].Weight;
            if (counts(root, courses[c].State))
            {
                inside.Add(_ofRoot[root][c], courses[c].Weight);
                mass += courses[c].Weight;
            }
        }

        return mass > 0 ? Scores.VarianceOfDifference(inside, mass, all, total) : 0;
    }
}
