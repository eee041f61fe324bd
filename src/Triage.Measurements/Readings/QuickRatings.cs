using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Triage.Measurements.Parts;
using Triage.Measurements.Quantities;

namespace Triage.Measurements.Readings;

/// <summary>
/// Tells what is printed on a part from what was measured on it. Printed: "47/16", "T1A", "10k", "4n7", "5V1", "1/4W"; farads and henries
/// that no "reads" comes before; volts right behind such a value; ohms that a "reads" comes after ("47 Ω reads 51 Ω"); amperes that a fuse's
/// speed comes after ("1A slow").
/// </summary>
internal static partial class QuickRatings
{
    [GeneratedRegex("^[0-9]+V[0-9]+$")]
    private static partial Regex LetterVolts { get; }

    /// <summary>The speed of a fuse in words (common practice, no source; the letters are those of IEC 60127, from memory).</summary>
    [GeneratedRegex("^(?<current>[0-9][0-9.,]* ?m?A) ((?<lag>slow|time-lag|anti-surge)|fast|quick)(-blow|-acting)?$", RegexOptions.IgnoreCase)]
    private static partial Regex FuseInWords { get; }

    public static QuickPiece? Read(string text, ImmutableArray<QuickToken> tokens, int at, List<QuickPiece> found)
    {
        var reads = at > 0 && QuickWords.Showing.Contains(tokens[at - 1].Word);
        for (var count = 3; count > 0 && !reads; count--)
        {
            if (QuickReading.Window(tokens, at, count) is not { } span)
            {
                continue;
            }

            var words = span.Of(text);
            var next = at + count < tokens.Length ? tokens[at + count].Word : "";
            var volts = found.LastOrDefault() is { Kind: QuickKind.Rating, Rating.Value: not null } last && string.IsNullOrWhiteSpace(text[last.Span.End..span.Start]);
            if ((Fuse(words) ?? (count > 2 ? null : Printed(words, next) ?? Volts(words, volts))) is { } rating)
            {
                return new QuickPiece(QuickKind.Rating, span, words) { Rating = rating };
            }
        }

        return null;
    }

    private static PartRating? Printed(string words, string next)
    {
        if (RatingShorthand.Read(words) is not { } rating || (rating.Speed is null && QuickPlaces.IsDesignator(words)))
        {
            return null; // "R47" names a part; "T1A" is a fuse
        }

        var spelledOhms = rating.Value is { Unit: Unit.Ohm } && (words[^1] is 'Ω' or '\u2126' || words.Contains("ohm", StringComparison.OrdinalIgnoreCase));
        return !spelledOhms || QuickWords.Showing.Contains(next) ? rating : null;
    }

    private static PartRating? Fuse(string words) =>
        FuseInWords.Match(words) is { Success: true } fuse && ValueText.Read(fuse.Groups["current"].Value, null).Quantity is { } current
            ? new PartRating { Amperes = current.Value, Speed = fuse.Groups["lag"].Success ? FuseSpeed.TimeLag : FuseSpeed.Quick }
            : null;

    private static PartRating? Volts(string words, bool behindRating) =>
        (behindRating || LetterVolts.IsMatch(words)) && ValueText.Read(words, null).Quantity is { Unit: Unit.Volt } volts
            ? new PartRating { Volts = volts.Value }
            : null;
}
