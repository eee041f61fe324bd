namespace Triage.Search.Meaning;

/// <summary>How likely words mean a value of a finding, from what the words and what the meaning say: a logistic regression.</summary>
/// <param name="ByWords">Confidence of the phrasing matcher, 0 to 1; 0 when it did not read this value.</param>
/// <param name="Closeness">Of the closest saying to the closest phrasing.</param>
/// <param name="OtherValue">Closeness of the text to another value of the same finding.</param>
/// <param name="OtherFinding">Closeness of the same saying to another finding.</param>
/// <param name="DenialDiffers">Only one of saying and phrasing denies.</param>
/// <param name="Past">The saying speaks of what was.</param>
/// <param name="Words">Words of the saying.</param>
internal sealed record Belief(double ByWords, double Closeness, double OtherValue, double OtherFinding, bool DenialDiffers, bool Normal, bool Past, int Words)
{
    /// <summary>Below it, nothing is taken to be meant. Flat between 0.3 and 0.4 in cross-validation.</summary>
    public const double Enough = 0.35;

    /// <summary>The same where no phrasing says it: on records of repair cafés nearly all that was believed less was wrong, and what nobody said moves the ranking.</summary>
    public const double EnoughAlone = 0.55;

    /// <summary>
    /// Of a phrasing read by words alone, as for a value whose phrasings are single words: the average over all such values.
    /// </summary>
    public static Belief OfWords(double confidence, bool normal) => new(confidence, 0.4, 0.3, 0.4, false, normal, false, 4);

    /// <summary>
    /// Weights fitted once, by iteratively reweighted least squares with a ridge of 0.1, on 170 complaints (the odd ones of
    /// complaints.md and the first round of complaints-fresh.md) against the phrasings as they stood before those complaints were
    /// looked at: ten-fold micro-F1 0.72 beside 0.61 by words alone.
    /// </summary>
    public double Probability
    {
        get
        {
            var logit = -7.18 + (4.62 * ByWords) + (7.51 * Closeness) - (3.05 * (Closeness - OtherValue)) + (6.80 * (Closeness - OtherFinding))
                - (DenialDiffers ? 1.36 : 0) - (Normal ? 0.65 : 0) - (Past ? 2.61 : 0) + (0.71 * Math.Log(1 + Words)) - (ByWords > 0 ? 2.36 * Closeness : 0);
            return 1 / (1 + Math.Exp(-logit));
        }
    }
}
