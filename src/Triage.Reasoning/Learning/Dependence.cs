namespace Triage.Reasoning.Learning;

/// <summary>How far findings of one cause depend on each other.</summary>
/// <param name="Kappa">Pseudo-jobs by which a pair of findings leans on independence.</param>
/// <param name="Reach">Number of known findings at which evidence counts half; infinite when it is not tempered.</param>
public sealed record Dependence(double Kappa, double Reach)
{
    /// <summary>Bayes' rule with tempered evidence.</summary>
    internal double[] Posterior(double[] shares, double[] logLikelihoods, int known)
    {
        double temperature = 1 + Math.Pow(known / Reach, 2);
        double[] scores = [.. logLikelihoods.Select((l, c) => Math.Log(shares[c]) + l / temperature)];
        double most = scores.Max();
        double[] chances = [.. scores.Select(score => Math.Exp(score - most))];
        double sum = chances.Sum();
        return [.. chances.Select(chance => chance / sum)];
    }
}
