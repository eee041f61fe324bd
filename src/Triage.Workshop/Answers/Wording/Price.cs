using System.Globalization;

namespace Triage.Workshop.Answers.Wording;

/// <summary>Money as one says it, the same on pages and paper.</summary>
public static class Price
{
    /// <summary>"0.23", "4.5", "18": as many digits as matter when one decides.</summary>
    /// <param name="amount">In the bench's currency.</param>
    public static string Say(double amount)
    {
        var size = Math.Abs(amount);
        var said = amount.ToString(size < 1 ? "0.##" : size < 10 ? "0.#" : "0", CultureInfo.InvariantCulture);
        return said == "-0" ? "0" : said;
    }
}
