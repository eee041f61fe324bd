namespace Triage.Reasoning.Planning;

/// <summary>
/// Expected drop of entropy over what is wrong now: I = H(outcome) − Σ P(set) H(outcome | set) (Shannon 1948).
/// </summary>
internal static class InformationGain
{
    public static double Bits(PlanningModel model, int option, IEnumerable<double> chances)
    {
        var noise = model.Options[option] switch
        {
            TestOption => OfTest(model, option),
            FixOption => OfFix(model, option),
            _ => 0,
        };
        return Math.Max(0, chances.Sum(Surprise) - noise);
    }

    private static double OfTest(PlanningModel model, int test) => model.Likelihood(test).Sum(row => row.Expect(model.Start.Belief, Surprise));

    private static double OfFix(PlanningModel model, int fix)
    {
        var clearance = model.Space.Clearances[fix]!;
        return clearance.Sum(model.Start.Belief, Array.ConvertAll(clearance.Works, w => Surprise(w) + Surprise(1 - w)));
    }

    private static double Surprise(double p) => p <= 0 ? 0 : -p * Math.Log2(p);
}
