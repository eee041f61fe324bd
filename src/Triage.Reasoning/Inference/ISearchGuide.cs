namespace Triage.Reasoning.Inference;

/// <summary>Upper bounds on the mass below the nodes of a search.</summary>
internal interface ISearchGuide
{
    /// <summary>Log of an upper bound on the mass of everything.</summary>
    double LogAll { get; }

    /// <summary><see cref="LogAll"/> is the mass of everything, not only a bound.</summary>
    bool IsExact { get; }

    /// <summary>Lists the children of a node.</summary>
    /// <param name="node">The node.</param>
    /// <param name="state">What its faults explain.</param>
    /// <param name="least">Relative to everything: children below this mass need not be listed.</param>
    /// <param name="branches">Where the children go.</param>
    /// <returns>An upper bound on the mass, relative to everything, of the children not listed; and a hint for those listed.</returns>
    (double Unlisted, double[]? Hint) Branches(SearchNode node, SearchState state, double least, List<Branch> branches);
}
