namespace Triage.Reasoning.Planning;

/// <summary>
/// Expected drop of entropy over what is wrong now: I = H(outcome) − Σ P(set) H(outcome | set) (Shannon 1948).
/// </summary>
internal static class InformationGain
{
    /// <param name="chances">P(outcome) of each outcome.</param>
    public static double Bits(PlanningModel model, int option, IEnumerable<double> chances)
    {
        var noise = model.Options[option] switch
        {
            _ when model.Looks.Has(option) => Noise(model.Looks.Of(option, model.Start.Done).Rows, model.Start.Belief),
            FixOption => OfFix(model, option),
            _ => 0,
        };
        return Math.Max(0, chances.Sum(Surprise) - noise);
    }

    /// <summary>Of something that shows one of several things.</summary>
    public static double Bits(LikelihoodRow[] rows, double[] belief) =>
        Math.Max(0, rows.Sum(row => Surprise(row.Expect(belief, p => p))) - Noise(rows, belief));

    private static double Noise(LikelihoodRow[] rows, double[] belief) => rows.Sum(row => row.Expect(belief, Surprise));

    private static double OfFix(PlanningModel model, int fix)
    {
        var clearance = model.Space.Clearances[fix]!;
        return clearance.Sum(model.Start.Belief, Array.ConvertAll(clearance.Works, w => Surprise(w) + Surprise(1 - w)));
    }

    private static double Surprise(double p) => p <= 0 ? 0 : -p * Math.Log2(p);
}
