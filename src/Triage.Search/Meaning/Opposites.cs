using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace Triage.Search.Meaning;

/// <summary>
/// Whether two sayings stand against each other in one word. To the sentence model "too slow" and "too fast" are nearly the same, since people write them
/// in the same places.
/// </summary>
internal static partial class Opposites
{
    private static readonly ImmutableArray<(FrozenSet<string> One, FrozenSet<string> Other)> Pairs =
    [
        Pair("slow slowly slower sluggish drags", "fast faster quick quickly rapid races"),
        Pair("hot warm warms warmed overheats heated", "cold cool cools cooled chilled"),
        Pair("loud loudly louder noisy", "quiet quietly faint faintly soft softly weak silent"),
        Pair("bright brightly brighter", "dark dim dimly dimmer black"),
        Pair("left", "right"),
        Pair("high too-high above", "low below"),
        Pair("open opens ejects out", "closed closes shut"),
        Pair("stuck jams jammed sticks seized", "free freely loose smooth smoothly"),
        Pair("adapter mains plugged wall plug", "cells battery batteries"),
        Pair("treble high-pitched", "bass boomy"),
        Pair("starts begins", "stops ends"),
        Pair("on", "off"),
        Pair("hear heard audible spins hums ticks clicks", "silent quiet inaudible"),
        Pair("charges charging", "discharged flat"),
        Pair("dry", "wet damp"),
        Pair("new", "old"),
    ];

    /// <summary>Each says one side of a pair, and not the same.</summary>
    public static bool Between(string one, string other)
    {
        var (mine, theirs) = (Words(one), Words(other));
        return Pairs.Any(p => Side(p, mine) is { } a && Side(p, theirs) is { } b && a != b);
    }

    /// <summary>"Sounds normal", "is fine", "works": nothing is wrong with it.</summary>
    public static bool SaysFine(string text) => NoTrouble().Replace(text, "fine") is var said && !Denial.In(said) && Fine().IsMatch(said);

    /// <summary>True for the first side, false for the second, null for neither or both.</summary>
    private static bool? Side((FrozenSet<string> One, FrozenSet<string> Other) pair, HashSet<string> words) =>
        (words.Overlaps(pair.One), words.Overlaps(pair.Other)) switch { (true, false) => true, (false, true) => false, _ => null };

    private static HashSet<string> Words(string text) => [.. Word().Matches(text.ToLowerInvariant()).Select(m => m.Value)];

    private static (FrozenSet<string> One, FrozenSet<string> Other) Pair(string one, string other) => (one.Split(' ').ToFrozenSet(), other.Split(' ').ToFrozenSet());

    [GeneratedRegex(@"[\p{L}\p{N}]+(?:['’-][\p{L}\p{N}]+)*")]
    private static partial Regex Word();

    [GeneratedRegex(@"\bno\s+(?:problems?|trouble|issues?|complaints?|faults?)\b", RegexOptions.IgnoreCase)]
    private static partial Regex NoTrouble();

    [GeneratedRegex(@"\b(fine|ok|okay|normal|normally|perfect|perfectly|good|works|working|all right|alright|as it should|as ever|like new|brand new|(?:all |still )+there|smooth|smoothly|nicely|nice and|straight away|every time|remembers|spotless|shiny|lights up|comes on)\b(?!\s+(?:at first|until|till|for|when|only|then|again))", RegexOptions.IgnoreCase)]
    private static partial Regex Fine();
}
