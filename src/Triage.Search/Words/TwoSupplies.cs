using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace Triage.Search.Words;

/// <summary>
/// "Plays on the plug but not on batteries": which of two supplies runs the machine is said by which clause denies, and no order of words
/// tells it. What this reads takes the place of any other reading of the two findings.
/// </summary>
internal static partial class TwoSupplies
{
    private const string OnAdapter = "only-on-adapter", OnCells = "only-on-cells";

    public static Recognition Settled(string text, Recognition read, Vocabulary vocabulary)
    {
        if (!vocabulary.Has(OnAdapter) || !vocabulary.Has(OnCells) || Runs(text) is not { } runs)
            return read;
        ImmutableArray<RecognisedFinding> said = runs.Mains == runs.Cells ? [Found(OnAdapter, "no"), Found(OnCells, "no")] : [Found(runs.Mains ? OnAdapter : OnCells, "yes")];
        return read with { Findings = [.. read.Findings.Where(f => f.Finding is not (OnAdapter or OnCells)).Concat(said).OrderBy(f => f.Span.Start)] };

        RecognisedFinding Found(string finding, string value) => new(finding, value, runs.Span.Of(text), runs.Span, 0.9);
    }

    /// <summary>Whether it runs from each; null when the text does not compare them.</summary>
    private static (bool Mains, bool Cells, TextSpan Span)? Runs(string text)
    {
        bool? mains = null, cells = null;
        int from = text.Length, to = 0;
        var clauses = Clause().Matches(text).Where(c => c.Value.Trim().Length > 0).ToList();
        for (var i = 0; i < clauses.Count; i++)
        {
            var (onMains, onCells) = (Names(Mains(), clauses[i].Value), Names(Cells(), clauses[i].Value));
            if (!onMains && !onCells)
                continue;
            var next = i + 1 < clauses.Count && !Names(Mains(), clauses[i + 1].Value) && !Names(Cells(), clauses[i + 1].Value) ? clauses[i + 1].Value : "";
            if ((Goes(clauses[i].Value) ?? Goes(next)) is not { } goes)
                continue;
            var only = onMains != onCells && Only().IsMatch(clauses[i].Value);
            if (onMains || only)
                mains = onMains ? goes || only : false;
            if (onCells || only)
                cells = onCells ? goes || only : false;
            (from, to) = (Math.Min(from, clauses[i].Index), Math.Max(to, clauses[i].Index + clauses[i].Length));
        }

        return mains is { } onPlug && cells is { } onThem ? (onPlug, onThem, new(from, to - from)) : null;
    }

    private static bool Names(Regex supply, string clause) => supply.IsMatch(Without().Replace(clause, " "));

    /// <summary>Whether a clause says that it runs; null when it says neither.</summary>
    private static bool? Goes(string clause) => Not().IsMatch(clause) ? false : Does().IsMatch(clause) || Only().IsMatch(clause) ? true : null;

    [GeneratedRegex(@"(?:(?!\b(?:but|and|though|although|while|whereas|yet|only|not (?:on|from|off|with))\b)[^,.;:!?\n])+|\b(?:only|not (?:on|from|off|with))\b[^,.;:!?\n]*?(?=\b(?:but|and|though|although|while|whereas|yet)\b|[,.;:!?\n]|$)", RegexOptions.IgnoreCase)]
    private static partial Regex Clause();

    [GeneratedRegex(@"\b(?:mains|adapt[eo]r|psu|charger|plug|plugged in|wall|power (?:supply|lead|cord|unit|brick)|outlet)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Mains();

    [GeneratedRegex(@"\b(?:batter(?:y|ies|ys)|cells)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Cells();

    /// <summary>"Without the batteries" does not speak of running from them, nor does "the battery light".</summary>
    [GeneratedRegex(@"\b(?:without|no)\s+(?:the |any |its )?(?:batter\w+|cells|adapt[eo]r|charger|plug)\b|\bbatter\w+ (?:charger|box|compartment|light|lamp|lid|door|contacts?|springs?|clip)\b|\b(?:headphone|jack|ear|signal) (?:plug|lead)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Without();

    [GeneratedRegex(@"\b(?:works?|runs?|plays?|goes|go|fine|ok|okay|does|starts?|comes? (?:on|up|alive)|lights?|good|alright|perfect(?:ly)?)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Does();

    [GeneratedRegex(@"\bonly\b", RegexOptions.IgnoreCase)]
    private static partial Regex Only();

    [GeneratedRegex(@"\b(?:not|never|no|nothing|dead|neither|nor|refuses|silent|silence|cannot|can'?t|won'?t|wont|doesn'?t|doesnt|don'?t|dont|isn'?t|didn'?t|didnt)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Not();
}
