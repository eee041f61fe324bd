using System.Collections.Immutable;
using Triage.Measurements.Quantities;

namespace Triage.Measurements.Readings;

/// <summary>
/// Reads the one line a tired repairer types: "C14 short, 47/16, plays". What is not understood is handed back, never dropped.
/// <para>A value right behind "reads", or with its unit spelled out, is a reading; see <see cref="QuickRatings"/> for what is a rating.
/// A bare number is in volts behind a rail, and in volts of the diode range behind a junction ("b-e"); elsewhere it is a problem.</para>
/// </summary>
public static class QuickReading
{
    /// <summary>Never throws.</summary>
    public static QuickLine Read(string text)
    {
        var tokens = QuickToken.Split(text);
        var found = new List<QuickPiece>();
        var left = new List<TextSpan>();
        var problems = ImmutableArray.CreateBuilder<MeasurementProblem>();
        for (var at = 0; at < tokens.Length;)
        {
            var before = at == 0 ? "" : tokens[at - 1].Word;
            if (Next(text, tokens, at, found, before) is { } piece)
            {
                found.Add(piece);
                while (at < tokens.Length && tokens[at].Span.Start < piece.Span.End)
                {
                    at++;
                }

                continue;
            }

            if (!SaysNothing(tokens[at].Word))
            {
                left.Add(tokens[at].Span);
                Doubt(tokens, at, found, before, problems);
            }

            at++;
        }

        return new QuickLine(text, [.. found], QuickAssembly.Readings(found), Merge(text, left), problems.ToImmutable());
    }

    private static bool SaysNothing(string word) =>
        QuickWords.Little.Contains(word) || QuickWords.Showing.Contains(word) || word.All(c => char.IsAscii(c) && !char.IsAsciiLetterOrDigit(c));

    private static QuickPiece? Next(string text, ImmutableArray<QuickToken> tokens, int at, List<QuickPiece> found, string before) =>
        Phrase(tokens, at)
        ?? Negated(tokens, at)
        ?? After(text, tokens, at)
        ?? QuickRatings.Read(text, tokens, at, found)
        ?? QuickPlaces.Read(text, tokens, at)
        ?? Value(text, tokens, at, found, before);

    private static QuickPiece? Phrase(ImmutableArray<QuickToken> tokens, int at)
    {
        for (var count = QuickWords.LongestPhrase; count > 0; count--)
        {
            if (Window(tokens, at, count) is not { } span || QuickWords.Find(string.Join(' ', tokens.Skip(at).Take(count).Select(t => t.Word))) is not { } phrase)
            {
                continue;
            }

            var after = at + count < tokens.Length ? tokens[at + count].Word : "";
            var limited = phrase is { Kind: QuickKind.Outcome, Says: "works" } && QuickWords.Limits.Contains(after);
            return new QuickPiece(phrase.Kind, span, limited ? "works with a limit" : phrase.Says);
        }

        return null;
    }

    private static QuickPiece? Negated(ImmutableArray<QuickToken> tokens, int at)
    {
        var reaches = QuickWords.Not.Contains(tokens[at].Word) && !tokens[at].EndsClause && at + 1 < tokens.Length;
        return reaches && Phrase(tokens, at + 1) is { Kind: QuickKind.Verdict or QuickKind.Outcome } phrase
            ? phrase with { Span = new TextSpan(tokens[at].Span.Start, phrase.Span.End - tokens[at].Span.Start), Says = $"not {phrase.Says}" }
            : null;
    }

    /// <summary>"after 30 s".</summary>
    private static QuickPiece? After(string text, ImmutableArray<QuickToken> tokens, int at)
    {
        for (var count = 3; count > 1 && tokens[at].Word.Equals("after", StringComparison.OrdinalIgnoreCase); count--)
        {
            if (Window(tokens, at, count) is { } span
                && ValueText.Read(text[tokens[at].Span.End..span.End], null) is { Quantity: { Unit: Unit.Second } time, Value: { } value })
            {
                return new QuickPiece(QuickKind.Condition, span, $"after {time}") { Value = value };
            }
        }

        return null;
    }

    private static QuickPiece? Value(string text, ImmutableArray<QuickToken> tokens, int at, List<QuickPiece> found, string before)
    {
        if (QuickPlaces.IsDesignator(tokens[at].Word) && !QuickWords.Showing.Contains(before))
        {
            return null;
        }

        // with its own unit first: "c-e 0.3 ohm" is no voltage
        return Value(text, tokens, at, null) ?? (Expected(found) is { } unit ? Value(text, tokens, at, unit) : null);
    }

    private static QuickPiece? Value(string text, ImmutableArray<QuickToken> tokens, int at, Unit? expected)
    {
        for (var count = 3; count > 0; count--)
        {
            if (Window(tokens, at, count) is { } span && ValueText.Read(span.Of(text), expected) is { Value: { Kind: not MeasuredKind.None } value })
            {
                return new QuickPiece(QuickKind.Reading, span, value.ToString()) { Value = value };
            }
        }

        return null;
    }

    /// <summary>Behind a rail or a junction a bare number is in volts.</summary>
    private static Unit? Expected(List<QuickPiece> found) =>
        found.LastOrDefault(p => p.Kind is QuickKind.Terminal or QuickKind.Designator or QuickKind.Part) is { Kind: QuickKind.Terminal } place && QuickPlaces.InVolts(place.Says)
            ? Unit.Volt
            : null;

    /// <summary>A number that stands where a reading is due but cannot be trusted says why.</summary>
    private static void Doubt(
        ImmutableArray<QuickToken> tokens, int at, List<QuickPiece> found, string before, ImmutableArray<MeasurementProblem>.Builder problems)
    {
        var due = QuickWords.Showing.Contains(before)
            || (found.LastOrDefault() is { Kind: QuickKind.Terminal or QuickKind.Designator } place && at > 0 && place.Span.End >= tokens[at - 1].Span.End);
        if (!due || !char.IsAsciiDigit(tokens[at].Word[0]))
        {
            return;
        }

        if (ValueText.Read(tokens[at].Word, Expected(found)).Problem is { } problem)
        {
            problems.Add(problem);
        }
    }

    internal static TextSpan? Window(ImmutableArray<QuickToken> tokens, int at, int count)
    {
        if (at + count > tokens.Length || tokens.Skip(at).Take(count - 1).Any(t => t.EndsClause))
        {
            return null;
        }

        return new TextSpan(tokens[at].Span.Start, tokens[at + count - 1].Span.End - tokens[at].Span.Start);
    }

    /// <summary>Neighbouring words become one stretch.</summary>
    private static ImmutableArray<TextSpan> Merge(string text, List<TextSpan> left)
    {
        var merged = new List<TextSpan>();
        foreach (var span in left)
        {
            if (merged.Count > 0 && string.IsNullOrWhiteSpace(text[merged[^1].End..span.Start]))
            {
                merged[^1] = new TextSpan(merged[^1].Start, span.End - merged[^1].Start);
            }
            else
            {
                merged.Add(span);
            }
        }

        return [.. merged];
    }
}
