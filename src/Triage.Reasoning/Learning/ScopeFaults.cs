namespace Triage.Reasoning.Learning;

/// <summary>The faults of one scope that are compared with each other, by their numbers in the notes, with their availability above 0.</summary>
internal sealed record ScopeFaults(int[] Faults, double[] Availability)
{
    /// <summary>Λ = Σ a λ: how fast such machines fail for any of their faults.</summary>
    internal double Sum(double[] rates)
    {
        double sum = 0;
        for (int i = 0; i < Faults.Length; i++) sum += Availability[i] * rates[Faults[i]];
        return sum;
    }

    /// <summary>Adds an amount to each fault, by its availability.</summary>
    internal void Spread(double amount, double[] over)
    {
        for (int i = 0; i < Faults.Length; i++) over[Faults[i]] += Availability[i] * amount;
    }

    /// <summary>Mean over the scopes that hold each fault, by availability and jobs; 0 for a fault that none holds.</summary>
    internal static double[] Means(int faults, IReadOnlyList<ScopeFaults> scopes, double[] values, double[]? jobs = null)
    {
        double[] sums = new double[faults], weights = new double[faults];
        for (int s = 0; s < scopes.Count; s++)
        {
            double weight = jobs?[s] ?? 1;
            if (weight == 0) continue;
            scopes[s].Spread(values[s] * weight, sums);
            scopes[s].Spread(weight, weights);
        }
        return [.. sums.Select((sum, f) => weights[f] > 0 ? sum / weights[f] : 0)];
    }
}
