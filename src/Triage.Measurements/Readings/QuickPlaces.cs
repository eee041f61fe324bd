using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Triage.Measurements.Quantities;

namespace Triage.Measurements.Readings;

/// <summary>Designators (letters after IEC 60617 and IEEE 315 habit, from memory), pins, junctions and rails in a quick line.</summary>
internal static partial class QuickPlaces
{
    [GeneratedRegex(@"^(R|C|L|D|Q|T|IC|U|F|FU|ZD|TR|VR|RV|SW|S|K|RL|RY|X|XT|CN|J|P|LED|LP|BT|VT|TH|BR|FB|JP|TP|M)[0-9]{1,4}[a-z]?$", RegexOptions.IgnoreCase)]
    private static partial Regex Designator { get; }

    [GeneratedRegex(@"^pins?\s*(?<pin>[0-9]{1,3}([-/][0-9]{1,3})?)$", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture)]
    private static partial Regex Pin { get; }

    [GeneratedRegex("^(b-e|e-b|b-c|c-b|c-e|e-c|g-s|s-g|d-s|s-d|g-d|d-g|a-k|k-a)$", RegexOptions.IgnoreCase)]
    private static partial Regex Junction { get; }

    [GeneratedRegex(@"^(?<volts>.+?)\s*(rail|line|supply|bus)$", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture)]
    private static partial Regex Rail { get; }

    public static bool IsDesignator(string word) => Designator.IsMatch(word);

    public static bool IsJunction(string place) => Junction.IsMatch(place);

    /// <summary>Rails, and junctions read on the diode range.</summary>
    public static bool InVolts(string place) => IsJunction(place) || Rail.IsMatch(place);

    /// <summary>"IC3", "pin 8", "b-e", "12 V rail"; null when the words from there on name no place.</summary>
    public static QuickPiece? Read(string text, ImmutableArray<QuickToken> tokens, int at)
    {
        if (IsDesignator(tokens[at].Word))
        {
            return new QuickPiece(QuickKind.Designator, tokens[at].Span, tokens[at].Word.ToUpperInvariant());
        }

        for (var count = Math.Min(3, tokens.Length - at); count > 0; count--)
        {
            var span = new TextSpan(tokens[at].Span.Start, tokens[at + count - 1].Span.End - tokens[at].Span.Start);
            if (Terminal(span.Of(text)) is { } says)
            {
                return new QuickPiece(QuickKind.Terminal, span, says);
            }
        }

        return null;
    }

    private static string? Terminal(string words)
    {
        if (IsJunction(words))
        {
            return words.ToLowerInvariant();
        }

        if (Pin.Match(words) is { Success: true } pin)
        {
            return $"pin {pin.Groups["pin"].Value}";
        }

        return Rail.Match(words) is { Success: true } rail && ValueText.Read(rail.Groups["volts"].Value, Unit.Volt).Quantity is { } volts
            ? $"{volts} rail"
            : null;
    }
}
