namespace Triage.Reasoning.Inference;

/// <summary>A partial choice of courses: positions before <see cref="Next"/> are decided.</summary>
internal sealed record SearchNode
{
    private SearchNode(int bits, int nominals)
    {
        Unexplained = new double[bits];
        Explained = new double[bits];
        Sum = new double[nominals];
        Count = new int[nominals];
    }

    /// <summary>The roots chosen not to be good, with their courses.</summary>
    public ChosenFault? Faults { get; init; }

    public int Next { get; private set; }

    /// <summary>Product of the weights of the courses decided.</summary>
    public double Weight { get; private set; } = 1;

    /// <summary>Per bit, P(not explained by the leak or what is decided), and its complement without cancellation.</summary>
    public double[] Unexplained { get; private init; }

    public double[] Explained { get; private init; }

    /// <summary>Per nominal finding, the likelihoods of the causes chosen, added up, and their number.</summary>
    public double[] Sum { get; private init; }

    public int[] Count { get; private init; }

    public static SearchNode Root(CompiledNetwork network) => new(network.Bits.Length, network.Nominals.Length)
    {
        Unexplained = [.. network.Bits.Select(b => b.LeakQ)],
        Explained = [.. network.Bits.Select(b => b.LeakP)],
    };

    public SearchNode Copy() => this with
    {
        Unexplained = [.. Unexplained],
        Explained = [.. Explained],
        Sum = [.. Sum],
        Count = [.. Count],
    };

    /// <summary>Overwrites this node with a child of another: good up to a position, this course there.</summary>
    public void SetToChild(SearchNode parent, int position, Course course, double weightBefore)
    {
        Next = position + 1;
        Weight = weightBefore * course.Weight;
        parent.Unexplained.CopyTo(Unexplained, 0);
        parent.Explained.CopyTo(Explained, 0);
        parent.Sum.CopyTo(Sum, 0);
        parent.Count.CopyTo(Count, 0);
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

/// <summary>The faults of a node: this one, and those chosen before it.</summary>
internal sealed record ChosenFault(ChosenFault? Before, int Root, int Course)
{
    public static IEnumerable<ChosenFault> All(ChosenFault? last)
    {
        for (var fault = last; fault is not null; fault = fault.Before)
        {
            yield return fault;
        }
    }
}
