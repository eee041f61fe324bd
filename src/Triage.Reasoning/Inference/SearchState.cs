namespace Triage.Reasoning.Inference;

/// <summary>What some chosen faults have explained: rewritten for each node.</summary>
internal sealed class SearchState(CompiledNetwork network)
{
    /// <summary>Per bit, P(not explained by the leak or the faults chosen), and its complement without cancellation.</summary>
    public double[] Unexplained { get; } = new double[network.Bits.Length];

    public double[] Explained { get; } = new double[network.Bits.Length];

    /// <summary>Per nominal finding, the likelihoods of the causes chosen, added up, and their number.</summary>
    public double[] Sum { get; } = new double[network.Nominals.Length];

    public int[] Count { get; } = new int[network.Nominals.Length];

    public void Set(ChosenFault? last) => Set(ChosenFault.All(last));

    public void Set(IEnumerable<ChosenFault> faults)
    {
        for (var b = 0; b < network.Bits.Length; b++)
        {
            (Unexplained[b], Explained[b]) = (network.Bits[b].LeakQ, network.Bits[b].LeakP);
        }

        Array.Clear(Sum);
        Array.Clear(Count);
        foreach (var fault in faults)
        {
            Add(network.Roots[fault.Root].Courses[fault.Course]);
        }
    }

    public void Set(SearchState parent, Course course)
    {
        parent.Unexplained.CopyTo(Unexplained, 0);
        parent.Explained.CopyTo(Explained, 0);
        parent.Sum.CopyTo(Sum, 0);
        parent.Count.CopyTo(Count, 0);
        Add(course);
    }

    /// <summary>Every certain bit is explained, so that bystanders are free.</summary>
    public bool IsSettled()
    {
        for (var b = 0; b < Unexplained.Length; b++)
        {
            if (network.Bits[b].Certain && Unexplained[b] > 0)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Log of the product of what is explained and of the nominal factors.</summary>
    public double LogExplained()
    {
        var (log, mass) = (0.0, 1.0);
        for (var b = 0; b < Explained.Length; b++)
        {
            Multiply(Explained[b]);
        }

        for (var n = 0; n < Sum.Length; n++)
        {
            Multiply(Nominal(n));
        }

        return log + Math.Log(mass);

        void Multiply(double factor)
        {
            mass *= factor;
            if (mass < 1e-200)
            {
                (log, mass) = (log + Math.Log(mass), 1);
            }
        }
    }

    /// <summary>A nominal factor: the mean of the picks, or the ambient likelihood.</summary>
    public double Nominal(int n) => Mean(n, Sum[n], Count[n]);

    /// <summary>The same with one more course.</summary>
    public double Nominal(int n, Course course)
    {
        var (sum, count) = (Sum[n], Count[n]);
        foreach (var pick in course.Picks)
        {
            if (pick.Nominal == n)
            {
                (sum, count) = (sum + pick.Likelihood, count + 1);
            }
        }

        return Mean(n, sum, count);
    }

    private double Mean(int n, double sum, int count) => count == 0 ? network.Nominals[n].Ambient : sum / count;

    private void Add(Course course)
    {
        foreach (var effect in course.Effects)
        {
            Explained[effect.Bit] += Unexplained[effect.Bit] * effect.P;
            Unexplained[effect.Bit] *= effect.Q;
        }

        foreach (var pick in course.Picks)
        {
            Sum[pick.Nominal] += pick.Likelihood;
            Count[pick.Nominal]++;
        }
    }
}
