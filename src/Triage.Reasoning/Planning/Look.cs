namespace Triage.Reasoning.Planning;

/// <summary>What a test or round can show, as far as one looks ahead: exactly one of these comes.</summary>
/// <param name="Number">Its option's for all that the option reveals; one of its own where some of a round is known already.</param>
/// <param name="Shows">The finding and its value; no finding where everything in a round is normal.</param>
/// <param name="Rows">P(shown | each fault set), in the same order.</param>
internal sealed record Look(int Number, (string? Finding, string Value)[] Shows, LikelihoodRow[] Rows)
{
    /// <summary>The name of the outcome in which nothing in a round is out of order.</summary>
    public const string AllNormal = "all normal";
}
