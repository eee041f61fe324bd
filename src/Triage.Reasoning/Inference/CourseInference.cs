namespace Triage.Reasoning.Inference;

/// <summary>Chooses between the dynamic programme and the search.</summary>
internal static class CourseInference
{
    /// <summary>Mass that a search may leave out, relative to all.</summary>
    private const double Bound = 1e-9;

    private const int Work = 150_000;

    /// <summary>Some seconds.</summary>
    private const double MostWideWork = 4e7;

    private static readonly CoursePosterior Impossible = new(double.NegativeInfinity, [], 0);

    /// <summary>The posterior of every course; LogTotal is negative infinity exactly when the evidence is impossible.</summary>
    /// <exception cref="ArithmeticException">Too entangled to be told from impossible.</exception>
    public static CoursePosterior Of(CompiledNetwork network)
    {
        if (double.IsNegativeInfinity(network.LogConstant))
        {
            return Impossible;
        }

        var plan = ExplanationPlan.Of(network);
        var posterior = HasProgramme(network, plan) ? ExplanationProgramme.Run(network, plan) : Search(network, plan);
        return posterior.Courses.Length > 0 ? posterior
            : !IsPossible(network) ? Impossible
            : HasProgramme(network, plan) && plan.Work <= MostWideWork ? WideProgramme.Run(network, plan)
            : throw TooEntangled();
    }

    /// <summary>Whether the evidence can happen at all, however unlikely.</summary>
    /// <exception cref="ArithmeticException">Too entangled to tell.</exception>
    public static bool IsPossible(CompiledNetwork network)
    {
        if (double.IsNegativeInfinity(network.LogConstant))
        {
            return false;
        }

        var support = Support.Of(network);
        var plan = ExplanationPlan.Of(support);
        if (HasProgramme(support, plan))
        {
            return ExplanationProgramme.Total(support, plan) > double.NegativeInfinity;
        }

        var found = CourseSearch.Run(support, plan, new(Work, Bound: 0) { Leaves = 1 });
        return found.Leaves.Length > 0 || (found.LeftOut > 0 ? throw TooEntangled() : false);
    }

    /// <summary>Whether the dynamic programme can do it, exactly.</summary>
    public static bool HasProgramme(CompiledNetwork network, ExplanationPlan plan) => network.Nominals.Length == 0 && plan.Feasible;

    private static CoursePosterior Search(CompiledNetwork network, ExplanationPlan plan)
    {
        var found = CourseSearch.Run(network, plan, new(Work, Bound));
        return found.Mass > 0
            ? new(found.LogUnit + Math.Log(found.Mass), Marginals(network, found), found.LeftOut / (found.Mass + found.LeftOut))
            : Impossible;
    }

    private static double[][] Marginals(CompiledNetwork network, FoundCourses found)
    {
        var mass = network.Roots.Select(r => new double[r.Courses.Length]).ToArray();
        var free = new double[found.Order.Length + 1];
        foreach (var leaf in found.Leaves)
        {
            free[leaf.Free] += leaf.Mass;
            foreach (var (_, root, course) in leaf.Faults)
            {
                mass[root][course] += leaf.Mass;
            }
        }

        Share(network, mass, free, found.Order, found.Mass);
        return mass;
    }

    /// <summary>Turns the mass of every course chosen into a posterior: a root that is free has its own weights there, one that is not chosen is good.</summary>
    /// <param name="mass">By root and course, of the sets that chose it; good is worked out here.</param>
    /// <param name="free">Mass by the first position in the order whose root is summed over.</param>
    /// <param name="total">All of it.</param>
    public static void Share(CompiledNetwork network, double[][] mass, double[] free, int[] order, double total)
    {
        var summedOver = 0.0;
        for (var i = 0; i < order.Length; i++)
        {
            summedOver += free[i];
            var (courses, row) = (network.Roots[order[i]].Courses, mass[order[i]]);
            row[0] = total - summedOver - row.Sum();
            for (var c = 0; c < row.Length; c++)
            {
                row[c] = Math.Max(0, row[c] + summedOver * courses[c].Weight) / total;
            }
        }
    }

    private static ArithmeticException TooEntangled() => new(
        "So much of this evidence is abnormal and so unlikely that no set of faults was found that explains it all. Check the observations for a slip, or leave some out.");
}
