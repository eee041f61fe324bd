using System.Collections.Concurrent;
using System.Collections.Frozen;
using Triage.Search.Analysis;

namespace Triage.Search.Words;

/// <summary>What single words are for the recogniser, whatever findings there are.</summary>
internal static class Lexicon
{
    private const int MostCached = 20_000;

    private static readonly NoteAnalyzer Analyzer = new();
    private static readonly ConcurrentDictionary<string, string> Stems = new();
    private static readonly FrozenSet<string> Functions = Lines("function.txt").SelectMany(l => l).ToFrozenSet();
    private static readonly FrozenDictionary<string, string> Same = Rings();

    private static readonly FrozenSet<string> Everyday =
        Lines("everyday.txt").Concat(Lines("same.txt")).SelectMany(l => l).ToFrozenSet();

    private static readonly FrozenSet<string> Lights = Lines("light.txt").SelectMany(l => l).ToFrozenSet();

    private static readonly FrozenSet<string> Nots =
        new[] { "not", "never", "cannot", "cant", "dont", "doesnt", "didnt", "wont", "isnt", "arent", "wasnt", "hasnt", "wouldnt", "aint", "nt", "dosnt", "doesent", "dosent", "dosn't", "does'nt", "wouldnt", "couldnt", "havent", "hadnt", "werent", "shouldnt", "cannt", "carnt" }.ToFrozenSet();

    private static readonly FrozenSet<string> Places =
        "in into inside under from with for still more most other same than everything anything something each any all every where who at after over about by to out up another either".Split(' ').ToFrozenSet();

    private static readonly FrozenSet<string> Nos = new[] { "no", "nothing", "none", "neither", "nor", "without", "zero", "nil" }.ToFrozenSet();

    private static readonly FrozenDictionary<string, WordRole> Breaks = new Dictionary<string, WordRole>
    {
        ["and"] = WordRole.And, ["or"] = WordRole.Or, ["nor"] = WordRole.Or, ["but"] = WordRole.But, ["although"] = WordRole.But,
        ["though"] = WordRole.But, ["however"] = WordRole.But, ["while"] = WordRole.But, ["whereas"] = WordRole.But, ["yet"] = WordRole.But,
        ["except"] = WordRole.But, ["then"] = WordRole.But, ["until"] = WordRole.But, ["after"] = WordRole.But, ["before"] = WordRole.But,
    }.ToFrozenDictionary();

    /// <summary>Stem of "works", "ok", "fine": alone it says nothing of anything.</summary>
    public static string Fine { get; } = Stem("works");

    public static WordRole RoleOf(string word) =>
        Breaks.TryGetValue(word, out var role) ? role
        : Nots.Contains(word) || word.EndsWith("n't", StringComparison.Ordinal) ? WordRole.Not
        : Nos.Contains(word) ? WordRole.No
        : Functions.Contains(word) ? WordRole.Function
        : Lights.Contains(word) ? WordRole.Light
        : WordRole.Content;

    /// <summary>A small word that says where, which or how long, unlike "it", "is" or "the".</summary>
    public static bool SaysWhere(string word) => Places.Contains(word);

    /// <summary>Stem of the search analyser; one for all words of a ring.</summary>
    public static string Stem(string word)
    {
        if (Stems.TryGetValue(word, out var known))
        {
            return known;
        }

        var stem = Same.GetValueOrDefault(word) ?? PlainStem(word);
        stem = Same.GetValueOrDefault(stem, stem);
        if (Stems.Count < MostCached)
        {
            Stems[word] = stem;
        }

        return stem;
    }

    /// <summary>A word that is right as it stands.</summary>
    public static bool IsEveryday(string word) => Everyday.Contains(word) || Functions.Contains(word);

    private static string PlainStem(string word) => Token.Of(word, Analyzer) is [var first, ..] ? first.Text : word;

    /// <summary>Word or stem → the stem that stands for its ring.</summary>
    private static FrozenDictionary<string, string> Rings()
    {
        var rings = new Dictionary<string, string>();
        foreach (var ring in Lines("same.txt"))
        {
            if (ring[0] == "=")
            {
                foreach (var word in ring[1..])
                    rings[word] = ring[1];
                continue;
            }

            var head = rings.GetValueOrDefault(ring[0]) ?? PlainStem(ring[0]);
            foreach (var word in ring)
            {
                rings.TryAdd(word, head);
                rings.TryAdd(PlainStem(word), head);
            }
        }

        return rings.ToFrozenDictionary();
    }

    private static List<string[]> Lines(string name)
    {
        using var stream = typeof(Lexicon).Assembly.GetManifestResourceStream(name)!;
        using var reader = new StreamReader(stream);
        return
        [
            .. reader.ReadToEnd().Split('\n')
                .Where(l => l.Length > 0 && l[0] != '#')
                .Select(l => l.Split(' ', StringSplitOptions.RemoveEmptyEntries)),
        ];
    }
}
