using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace Triage.Search.Words;

/// <summary>Reads what was tried already, so that it is not taken for a finding.</summary>
internal static partial class TriedFixes
{
    /// <summary>What was tried, and the text with those words (and what came of it) blanked out by commas.</summary>
    public static (ImmutableArray<TriedFix> Tried, string Remaining) In(string text)
    {
        var tried = ImmutableArray.CreateBuilder<TriedFix>();
        var rest = text.ToCharArray();
        var deeds = Deed().Matches(text);
        for (var i = 0; i < deeds.Count; i++)
        {
            var deed = deeds[i].Groups["deed"];
            var until = i + 1 < deeds.Count ? deeds[i + 1].Index : text.Length;
            var after = text[deed.Index..until][deed.Length..];
            Blank(rest, deed.Index, deed.Length);
            bool? helped = null;
            if (NoHelp().Match(after) is { Success: true } no && IsNear(after, no))
            {
                helped = false;
                Blank(rest, deed.Index + deed.Length + no.Index, no.Length);
            }
            else if (Help().Match(after) is { Success: true } yes && IsNear(after, yes))
            {
                helped = true;
                Blank(rest, deed.Index + deed.Length + yes.Index, yes.Length);
            }
            else if (StillSo().IsMatch(after))
            {
                helped = false;
            }

            tried.Add(new(deed.Value, new(deed.Index, deed.Length), helped));
        }

        return (tried.ToImmutable(), new(rest));
    }

    /// <summary>In the same sentence or the next.</summary>
    private static bool IsNear(string after, Match outcome) =>
        after.AsSpan(0, outcome.Index).Count('.') <= 1 && outcome.Index < 60;

    private static void Blank(char[] text, int from, int length) => Array.Fill(text, ',', from, length);

    private const string Verb = @"(?:(?:re)?chang(?:ed|ing)|replac(?:ed|ing)|swapp(?:ed|ing)|fitted|clean(?:ed|ing)|checked|(?:re)?charged|re-?soldered|re-?seated|re-?capped|re-?set|lubricated|oiled|bought|removed|tried|put\s+in|put|took\s+out|sprayed|adjusted|demagneti[sz]ed|re-?booted|re-?started|installed|unplugged|wiggled|jiggled)";

    /// <summary>One more word of the deed, up to what came of it.</summary>
    private const string More = @"(?:\s+(?!(?:but|and|no|still|without|didn't|did|does|doesn't|made|that|which|now)\b)[\w'’-]+)";

    /// <summary>In take-in notes a sentence begins with what was done: "Cleaned CD lens."</summary>
    private const string Begins = @"(?:clean|cleaned|used(?!\s+to\b)|opened|checked|tested|removed|replaced|repaired|mended|fitted|swapped|tightened|adjusted|lubricated|oiled|sprayed|re-?soldered|soldered|glued|dismantled|disconnected|reconnected|disabled|rewired|diagnosed|advised)";

    [GeneratedRegex(@"(?<deed>(?<=(?:^|[.;!?,\n])\s*)(?:then\s+)?" + Begins + @"\b" + More + @"{0,6}|\b(?:(?:i|we|he|she|they)(?:'ve|\s+have|\s+has)?\s+(?:already\s+|even\s+|also\s+|just\s+)*(?:tried\s+)?" + Verb + @"\b(?:\s+(?:in|out|off|on))?" + More + @"{0,6}|\b(?<!\b(?:has|have|is|was|keeps?|gets?)\s)(?:already\s+|just\s+)?(?:tried\s+)?" + Verb + @"(?:\s+(?:in|out))?\s+(?:both\s+|all\s+)?(?:the|a|an|all|both|my|its|new|another|some|every|fresh|different|other|it|batter(?:y|ies)|fuses?|heads?|belts?|caps?|cells|adapters?|leads?|cables?)\b" + More + @"{0,5}|\b(?:new|fresh)\s+(?:batter(?:y|ies)|fuse|belts?|cells|adapter|caps?)(?=\s*[,;.]?\s*(?:but|no|made|did|didn't|does|doesn't|still))|\b[\w'’-]+\s+(?:was|were|has been|have been|already)\s+" + Verb + @"\b)(?:\s+and\s+(?:the|both|all|a|new|its)\s+[\w'’-]+(?=\s*(?:[,;.]|$|but|no|still)))?)", RegexOptions.IgnoreCase)]
    private static partial Regex Deed();

    [GeneratedRegex(@"\b(?:(?:with |made |makes |but |and |it )*no\s+(?:difference|change|luck|joy|help|improvement|better|effect)(?:\s+at all)?|(?:that |it |which |and |but |still )*(?:did|does|do)(?:\s+not|n['’]?t)\s+(?:help|change|fix|cure|make)(?:\s+(?:anything|it|a|any|much|difference|thing))*|(?:still\s+)?(?:just\s+|exactly\s+)?(?:the\s+same|same(?=\s+(?:problem|thing|fault|result)))(?:\s+(?:problem|thing|fault|result))?|to\s+no\s+avail|without\s+(?:any\s+)?(?:success|luck|effect)|nothing\s+changed)\b", RegexOptions.IgnoreCase)]
    private static partial Regex NoHelp();

    [GeneratedRegex(@"\b(?:(?:and |that |which |it )*(?:fixed|cured|helped|solved)(?:\s+(?:it|that))?(?:\s+for\s+a\s+\w+)?|(?:and\s+)?(?:it\s+)?works?\s+(?:again|now)(?:\s+for\s+a\s+\w+)?|came\s+back\s+to\s+life)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Help();

    [GeneratedRegex(@"^[\s,;.]*(?:but\b|still\b|and still\b|(?:it )?(?:is|it's) still\b)|^[^.!?]*\bstill\b", RegexOptions.IgnoreCase)]
    private static partial Regex StillSo();
}
