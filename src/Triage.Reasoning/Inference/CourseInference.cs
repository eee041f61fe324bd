namespace Triage.Reasoning.Inference;

/// <summary>Chooses between the dynamic programme and the enumeration.</summary>
internal static class CourseInference
{
    public static CoursePosterior Of(CompiledNetwork network)
    {
        if (double.IsNegativeInfinity(network.LogConstant))
        {
            return new(double.NegativeInfinity, [], 0);
        }

        var plan = ExplanationPlan.Of(network);
        if (network.Nominals.Length > 0 || !plan.Feasible)
        {
            throw new NotSupportedException("enumeration");
        }

        return ExplanationProgramme.Run(network, plan);
    }
}
