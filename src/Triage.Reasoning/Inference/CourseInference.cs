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

        var summedOver = 0.0;
        for (var i = 0; i < found.Order.Length; i++)
        {
            summedOver += free[i];
            var root = found.Order[i];
            mass[root][0] = found.Mass - summedOver - mass[root].Sum();
            mass[root] = [.. network.Roots[root].Courses.Select((c, k) => Math.Max(0, mass[root][k] + summedOver * c.Weight) / found.Mass)];
        }

        return mass;
    }

    private static ArithmeticException TooEntangled() => new(
        "So much of this evidence is abnormal and so unlikely that no set of faults was found that explains it all. Check the observations for a slip, or leave some out.");
}
