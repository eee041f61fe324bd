using System.Collections.Frozen;

namespace Triage.Measurements.Readings;

/// <summary>The trade's words in a quick line, each with its settled wording (common practice, no source).</summary>
internal static class QuickWords
{
    public const string UnderLoad = "under load";
    public const string NoLoad = "no load";
    public const string Reversed = "leads reversed";
    public const string OutOfCircuit = "out of circuit";
    public const string PowerOff = "power off";
    public const string Drained = "drained";
    public const string SeriesResistance = "series resistance";

    private static readonly FrozenDictionary<string, (QuickKind Kind, string Says)> Phrases = Build();

    /// <summary>Words that carry nothing by themselves.</summary>
    public static FrozenSet<string> Little { get; } = Words(
        "the a an is was it and on at to of in with so then now has had gone were are its tests tested found between from for only still fitted");

    /// <summary>Words after which a value is a reading and not a rating.</summary>
    public static FrozenSet<string> Showing { get; } = Words("reads read reading measures measured shows showing gives = says at");

    /// <summary>Words that turn the next verdict round.</summary>
    public static FrozenSet<string> Not { get; } = Words("not isn't isnt wasn't never no ain't");

    /// <summary>Words that limit a success: "works until the power goes".</summary>
    public static FrozenSet<string> Limits { get; } = Words("until till for when if unless but only while once");

    public static int LongestPhrase { get; } = Phrases.Keys.Max(p => p.Count(c => c == ' ') + 1);

    public static (QuickKind Kind, string Says)? Find(string phrase) => Phrases.TryGetValue(phrase, out var found) ? found : null;

    private static FrozenSet<string> Words(string words) => words.Split(' ').ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    private static FrozenDictionary<string, (QuickKind, string)> Build()
    {
        var phrases = new Dictionary<string, (QuickKind, string)>(StringComparer.OrdinalIgnoreCase);
        void Add(QuickKind kind, string says, string ways)
        {
            foreach (var way in ways.Split('|').Append(says))
            {
                phrases[way] = (kind, says);
            }
        }

        Verdicts(Add);
        Outcomes(Add);
        Deeds(Add);
        foreach (var part in "belt|fuse|idler|pinch roller|lamp|bulb|switch|socket|jack|cable|ribbon|display|battery|cell|transformer|regulator|crystal|keypad|speaker|motor|head|relay|pot|fader|joint|trace|capacitor|diode|resistor|transistor".Split('|'))
        {
            Add(QuickKind.Part, part, part);
        }

        Add(QuickKind.Part, "trace", "track");
        Add(QuickKind.Part, "capacitor", "cap|electrolytic");
        return phrases.ToFrozenDictionary(StringComparer.OrdinalIgnoreCase);
    }

    private static void Verdicts(Action<QuickKind, string, string> add)
    {
        add(QuickKind.Verdict, "shorted", "short|shorts|dead short|short circuit|s/c");
        add(QuickKind.Verdict, "open", "open circuit|o/c");
        add(QuickKind.Verdict, "leaky", "electrically leaky");
        add(QuickKind.Verdict, "leaked", "leaking|has leaked");
        add(QuickKind.Verdict, "dried out", "dry|dried up|dried");
        add(QuickKind.Verdict, "dry joint", "cracked joint|bad joint");
        add(QuickKind.Verdict, "cracked", "crack|broken");
        add(QuickKind.Verdict, "ok", "okay|good|fine|tests good|tests ok");
        add(QuickKind.Verdict, "bulging", "bulged|swollen|domed");
        add(QuickKind.Verdict, "burnt", "burned|charred|burnt out");
        add(QuickKind.Verdict, "turned to tar", "gone to tar|gone to goo|melted|gooey|sticky");
        add(QuickKind.Verdict, "perished", "crumbled|gone hard|hardened");
        add(QuickKind.Verdict, "slack", "stretched|slips|slipping");
        add(QuickKind.Verdict, "corroded", "corrosion|verdigris|gone green");
        add(QuickKind.Verdict, "high series resistance", "high esr");
        add(QuickKind.Verdict, "bad", "faulty|duff|dud");
        add(QuickKind.Verdict, "blown", "blew");
        foreach (var plain in "low|high|noisy|intermittent|dirty|worn|seized|stuck|missing|dead|loose|weak|lifted".Split('|'))
        {
            add(QuickKind.Verdict, plain, plain);
        }
    }

    private static void Outcomes(Action<QuickKind, string, string> add)
    {
        add(QuickKind.Outcome, "works", "plays|runs|holds|works again|plays again|runs again|fixed|alive|alive again|powers up|boots|sorted|all good|works fine|plays fine|runs fine");
        add(QuickKind.Outcome, "no difference", "no change|same|same fault|still dead|still faulty|still the same|makes no difference|made no difference|no better|no joy");
        add(QuickKind.Outcome, "failed again", "dead again|blows again|blew again|fails again|same again|came back|comes back|died again|gone again|shorted again|blows");
        foreach (var not in "does not|doesn't|doesnt|will not|won't|wont|did not|didn't|still won't|still doesn't".Split('|'))
        {
            add(QuickKind.Outcome, "does not work", $"{not} work|{not} play|{not} run|{not} start");
        }
    }

    private static void Deeds(Action<QuickKind, string, string> add)
    {
        add(QuickKind.Action, "swapped", "swap|replaced|changed|exchanged");
        add(QuickKind.Action, "fitted new", "new fitted|new one|new|renewed|new one fitted|fitted new one");
        add(QuickKind.Action, "resoldered", "resolder|reflowed|reflow");
        add(QuickKind.Action, "removed", "taken out|pulled");
        foreach (var plain in "cleaned|recapped|bridged|reset|neutralised|lubricated|reseated".Split('|'))
        {
            add(QuickKind.Action, plain, plain);
        }

        add(QuickKind.Condition, UnderLoad, "on load|loaded");
        add(QuickKind.Condition, NoLoad, "off load|unloaded|without load");
        add(QuickKind.Condition, Reversed, "reversed|reverse|leads the other way|leads swapped|other way round");
        add(QuickKind.Condition, OutOfCircuit, "one leg lifted|leg lifted|lifted one leg|one leg up");
        add(QuickKind.Condition, PowerOff, "unplugged|switched off");
        add(QuickKind.Condition, Drained, "discharged");
        add(QuickKind.Condition, SeriesResistance, "esr");
        add(QuickKind.Condition, "warm", "when warm|hot|when hot|warmed up");
        add(QuickKind.Condition, "cold", "when cold|from cold");
        add(QuickKind.Condition, "in circuit", "in place");
    }
}
