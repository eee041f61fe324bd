using System.Text.RegularExpressions;

namespace Triage.Search.Words;

/// <summary>Words that say when something shows, how often, how sure it is, or that it is long past.</summary>
/// <param name="Kind">A condition as findings have them (warm, cold…), or one of the constants.</param>
internal sealed partial record Circumstance(string Kind, TextSpan Span)
{
    public const string Intermittent = "intermittent";
    public const string Hedged = "hedged";
    public const string Past = "past";

    private static readonly (string Kind, Regex Words)[] Kinds =
    [
        ("cold", Cold()), ("warm", Warm()), ("flexed", Flexed()), ("tapped", Tapped()), ("on-load", OnLoad()),
        ("after-power-loss", AfterPowerLoss()), (Intermittent, Sometimes()), (Hedged, Hedge()), (Past, LongAgo()),
    ];

    public bool IsCondition => Kind is not (Intermittent or Hedged or Past);

    /// <summary>"Plays for ten minutes, then stops": belongs to what comes after it.</summary>
    public bool IsLeadIn { get; init; }

    /// <summary>All circumstances in a text, in order; of two that overlap, the one named first above.</summary>
    public static List<Circumstance> In(string text)
    {
        var found = new List<Circumstance>();
        foreach (var (kind, words) in Kinds)
        {
            foreach (Match m in words.Matches(text))
            {
                if (!found.Any(f => f.Span.Start < m.Index + m.Length && m.Index < f.Span.End))
                {
                    found.Add(new(kind, new(m.Index, m.Length)) { IsLeadIn = m.Groups["lead"].Success });
                }
            }
        }

        return [.. found.OrderBy(f => f.Span.Start)];
    }

    private const string Its = @"(?:(?:it|it's|its|it is|the (?:set|unit|machine|thing|case|amp|radio)|they|things?)\s+)?(?:(?:gets?|is|are|has|been|running|got|still|stone|completely|fully)\s+)*";

    private const string Thing = @"(?:\s+(?:(?:on|at|against|down|in)\s+)?(?:(?:it|the|its|my|a)\b\s*)?(?:(?:top|side|back|bottom|left|right|front|rear|end|corner)\b(?:\s+of(?:\s+the)?)?\s*)?(?:case|cabinet|lid|board|cover|chassis|unit|set|machine|keyboard|frame|edge|hinge|side|plug|lead|jack|cable|socket|corner|it|top|lead)\b)?(?:\s+at an angle)?";

    /// <summary>"When I press play" flexes nothing: what is pressed, moved or opened is the thing itself, or nothing is named.</summary>
    private const string NotSomethingElse = @"(?=\s*(?:[^\w\s]|$|(?:and|then|or|but|it|they|i|there|down|in|on|at|against|here|hard|gently|slightly|a bit|just|about|around|sometimes)\b))";

    [GeneratedRegex(@"\b(?:(?:when|if|while|whenever|only|from)\s+" + Its + @"cold|until\s+" + Its + @"(?:warms?(?:\s+up)?|warmed(?:\s+up)?|warm|hot)|from cold|first thing(?:\s+in the morning)?|in the mornings?|on cold days|at first|when first (?:switched|turned) on|for the first (?:few |couple of |\w+ )?minutes?)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Cold();

    [GeneratedRegex(@"\b(?:(?<lead>for\s+(?:about\s+|around\s+|only\s+|just\s+|maybe\s+)?(?:a |an )?(?:few |couple of |half an |half a )?(?:\d+\s*|\w+ )?(?:minutes?|mins?|hours?|while)(?=[\s,]*(?:and\s+)?(?:then|before|until|and)\b))|(?:when|once|after|if|as|whenever|while)\s+" + Its + @"(?:warm(?:s|ed|ing)?|hot|heats?|heated)(?:\s+up)?|(?:after|within|in)\s+(?:about\s+|around\s+|some\s+|roughly\s+|only\s+|just\s+)?(?:a |an )?(?:few |couple of |half an |half a )?(?:\d+\s*|ten |five |twenty |thirty |fifteen |two |three |four |six |forty )?(?:minutes?|mins?|hours?|hrs?|while)(?:\s+or\s+(?:so|two))?|(?:once|when)\s+(?:it's|it has|it is|its)\s+been\s+(?:on|running|playing)(?:\s+(?:for\s+)?(?:a while|an hour|some time))?)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Warm();

    [GeneratedRegex(@"\b(?:(?:if|when|whenever|unless|by|while|until)\s+(?:(?:i|you|we|one|it's|it is)\s+)?(?:press|pressing|pressed|push|pushing|flex|flexing|flexed|squeeze|squeezing|squeezed|twist|twisting|twisted|bend|bending|bent|lean|leaning|wiggle|wiggling|wiggled|waggle|waggling|move|moving|moved|open|opening|tilt|tilting|tilted|hold|holding|held)(?:ed|ing)?" + Thing + NotSomethingElse + ")", RegexOptions.IgnoreCase)]
    private static partial Regex Flexed();

    [GeneratedRegex(@"\b(?:(?:if|when|whenever|unless|by|until|after)\s+(?:(?:i|you|we|one|it's|it is)\s+)?(?:tap|tapping|tapped|knock|knocking|knocked|hit|hitting|thump|thumping|thumped|bang|banging|banged|slap|slapping|bump|bumping|bumped)(?:s|ed)?|(?:with|after|needs?)\s+a\s+(?:good\s+|light\s+)?(?:tap|knock|thump|bang|slap|bump))" + Thing, RegexOptions.IgnoreCase)]
    private static partial Regex Tapped();

    [GeneratedRegex(@"\b(?:(?:under|on)\s+(?:heavy\s+)?load|(?:when|if|at)\s+(?:(?:i|you|it's|it is|it|the volume is|the volume)\s+)?(?:(?:turn(?:ed)?|play(?:ed|ing)?)\s+)?(?:it\s+)?(?:up\s+)?(?:loud(?:ly)?|high volume|full volume|loud volume)|(?:when|if)\s+(?:(?:i|you)\s+turn\s+)?(?:it\s+|the volume\s+)?(?:is\s+)?turned\s+up|(?:when|if)\s+(?:i|you)\s+turn\s+(?:it|the volume)\s+up|on loud (?:notes|passages)|with (?:a lot of|many) (?:keys|notes))\b", RegexOptions.IgnoreCase)]
    private static partial Regex OnLoad();

    [GeneratedRegex(@"\b(?:after\s+(?:(?:a|the)\s+)?(?:power (?:is |was )?(?:lost|cut|off|loss|failure)|power\s*cut|(?:being |it (?:is|was|has been) )?(?:unplugged|switched off|turned off)|being off(?: overnight)?|(?:i |you )?unplug(?:ging)?(?: it)?)|when(?:ever)?\s+(?:(?:i|you)\s+)?(?:it's |it is |the power is )?(?:unplug(?:ged)?|power is (?:cut|lost|removed))(?: it)?|every time (?:it is|it's|i|you) (?:switched off|turned off|unplug(?:ged)?|switch it off|turn it off)(?: it)?|overnight)\b", RegexOptions.IgnoreCase)]
    private static partial Regex AfterPowerLoss();

    [GeneratedRegex(@"\b(?:sometimes|occasionally|now and (?:then|again)|intermittent(?:ly)?|on and off|off and on|comes and goes|at times|from time to time|every so often|every now and (?:then|again)|once in a while|some days|(?<=(?:not|n't)\s)always|randomly|at random)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Sometimes();

    [GeneratedRegex(@"\b(?:(?:i|we|he|she|they)\s+(?:think|thinks|guess|suppose|believe|reckon|assume)|maybe|perhaps|possibly|probably|apparently|seems?(?:\s+to(?:\s+be)?)?|seemingly|might(?: be)?|could be|may be|(?:i'm |i am |im )?not (?:quite |really |entirely )?sure(?: (?:if|whether|but))?|as far as i (?:can (?:tell|see)|know)|i don'?t know (?:if|whether)|looks like)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Hedge();

    [GeneratedRegex(@"\b(?:used to|(?:previous|last|former) owner (?:said|says|told|mentioned|claimed)|previously|formerly|originally|(?:was|were|worked|working|played|been)\s+(?:(?:perfectly|working|playing|fine|ok|okay|well|good|great|all right|alright)\s+)*(?=(?:until|till|before|last|yesterday|when i|for years)\b)(?:until|till|before|last|yesterday|for years)?(?:\s+(?:last|yesterday|this|a|the|few|week|month|year|summer|winter|recently|now|days?|weeks?|ago)\b)*)", RegexOptions.IgnoreCase)]
    private static partial Regex LongAgo();
}
