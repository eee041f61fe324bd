using MadeUpJobs;

namespace Triage.SearchBench;

/// <summary>Words of which most stand in few notes: markings, designators, invented names.</summary>
internal static class RareWords
{
    public static readonly string[] States = ["short", "open", "leaky", "dry", "cracked", "low", "drifts when warm", "swapped", "reads high", "corroded", "lifted", "fine after all"];
    public static readonly string[] Ratings = ["47/16", "100/25", "2200/35", "10u 50V", "4n7", "0.1 F 5.5 V", "1k2", "220R", "1N4148", "T2A", "8 MHz", "9 V cells"];
    public static readonly string[] Results = ["plays", "no change", "display back", "still dead", "works until warm", "hum gone", "holds now", "keys all answer", "wait and see"];
    public static readonly string[] Parts = ["big chip", "regulator", "driver", "crystal", "socketed memory", "opto", "belt bag", "relay", "speaker", "adapter", "transformer", "pack of cells"];
    public static readonly string[] Lots = ["bag", "drawer", "lot", "parcel", "tin"];

    private static readonly string[] Designators = ["C", "R", "IC", "Q", "D", "CN", "SW", "L", "F", "T"];
    private static readonly string[] Syllables = ["ba", "dor", "fen", "gil", "hem", "jun", "kes", "lam", "mor", "nil", "pra", "quo", "ris", "sta", "tub", "vel", "wyn", "zek", "oth", "ard"];
    private const string Letters = "ABCDEFGHJKLMNPRSTUVWXYZ";

    public static string Designator(Random random) => $"{random.Any(Designators)}{random.Next(1, 400)}";

    /// <summary>Such as QX-4471B.</summary>
    public static string Marking(Random random) => $"{Letter(random)}{Letter(random)}{(random.Happens(0.5) ? "-" : "")}{Skewed(random, 9000) + 1000}{Letter(random)}";

    /// <summary>Two to four syllables, the first ones oftener: a few names are common, most are rare.</summary>
    public static string Name(Random random) => string.Concat(Enumerable.Range(0, random.Next(2, 5)).Select(_ => Syllables[Skewed(random, Syllables.Length)]));

    private static int Skewed(Random random, int below) => (int)(below * random.NextDouble() * random.NextDouble());

    private static char Letter(Random random) => Letters[Skewed(random, Letters.Length)];
}
