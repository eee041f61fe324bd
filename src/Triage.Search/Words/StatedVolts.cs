using System.Globalization;
using System.Text.RegularExpressions;

namespace Triage.Search.Words;

/// <summary>"5 V line sits at 3.1", "adapter gives 5.9 of its 6 volts": volts read against volts that should be there.</summary>
internal static partial class StatedVolts
{
    // regulators and adapters hold within five parts in a hundred; common practice, no source
    private const double Low = 0.95;
    private const double Nothing = 0.05;
    private const double Sureness = 0.8;

    public static IEnumerable<RecognisedFinding> In(string text, Vocabulary vocabulary) => Read().Matches(text).Concat(Of().Matches(text))
        .Select(m => (Match: m, Finding: IsAdapter(text, m) ? "adapter-output" : "rail", Share: Volts(m, "read") / Volts(m, "should")))
        .Where(v => vocabulary.Has(v.Finding) && v.Share is >= 0 and < 1.5)
        .Select(v => new RecognisedFinding(
            v.Finding, v.Share < Nothing ? "none" : v.Share <= Low ? "low" : "normal", "", new(v.Match.Index, v.Match.Length), Sureness));

    private static bool IsAdapter(string text, Match match) =>
        Adapter().IsMatch(text[Math.Max(0, match.Index - 80)..(match.Index + match.Length)]) && !match.Value.Contains("rail", StringComparison.OrdinalIgnoreCase);

    private static double Volts(Match match, string name) =>
        double.Parse(match.Groups[name].Value.Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"(?<should>\d{1,3}(?:[.,]\d+)?)\s*(?:V|volts?)\s+(?:DC\s+)?(?:rail|line|supply|output|regulator|adapter|charger)?[\w\s]{0,30}?\b(?:reads?|sits? at|is(?: down)? at|is only|measures?|shows?|gives?|has|at|down to|comes out (?:as|at))\s+(?:only\s+|just\s+|about\s+)?(?<read>\d{1,3}(?:[.,]\d+)?)(?!\s*(?:ohm|mA|A\b|mV|k\b|\d|Hz|kHz|minutes?|hours?))", RegexOptions.IgnoreCase)]
    private static partial Regex Read();

    [GeneratedRegex(@"(?<read>\d{1,3}(?:[.,]\d+)?)\s*(?:V|volts?)?\s+(?:out of|of|instead of|where it should be|against)\s+(?:its|the|a)?\s*(?<should>\d{1,3}(?:[.,]\d+)?)\s*(?:V|volts?)?\b(?<=V|volts?)", RegexOptions.IgnoreCase)]
    private static partial Regex Of();

    [GeneratedRegex(@"\b(?:adapt[eo]r|charger|psu|brick|wall wart|power supply)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Adapter();
}
