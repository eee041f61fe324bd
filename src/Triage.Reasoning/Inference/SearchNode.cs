namespace Triage.Reasoning.Inference;

/// <summary>A partial choice of courses: positions before <see cref="Next"/> are decided, all but the faults chosen are good.</summary>
/// <param name="Last">The faults chosen.</param>
/// <param name="Next">First position that is not decided.</param>
/// <param name="LogWeight">Logarithm of the product of the weights of the courses decided.</param>
internal sealed record SearchNode(ChosenFault? Last, int Next, double LogWeight)
{
    /// <summary>What a guide found out where this node branched off, to start from.</summary>
    public double[]? Hint { get; init; }
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

/// <summary>A child of a node: good up to a position, a fault there.</summary>
/// <param name="Position">Of the root at fault.</param>
/// <param name="Course">Index of its course, never 0.</param>
/// <param name="LogWeight">Logarithm of the weights decided with it.</param>
/// <param name="LogBound">Logarithm of an upper bound on the mass of the child and all below it.</param>
internal readonly record struct Branch(int Position, int Course, double LogWeight, double LogBound);
