using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Triage.Notes.Kinds;

namespace Triage.Workshop.Knowledge;

/// <summary>What words tell of a machine's build: "mains built in", "six AA cells".</summary>
internal static partial class BuildWords
{
    /// <summary>
    /// What a description of the machine tells, and what its owner lets fall: he names one of several things that feed it and leaves out the
    /// rest, so that of a trait of which a machine may have several only the description counts.
    /// </summary>
    public static Build Told(DeviceClass kind, string description, string complaint) =>
        Told([.. kind.Builds.Where(t => !t.Several)], complaint).With(Told(kind.Builds, description));

    /// <summary>Where words tell two values of a trait of which a machine has exactly one, nothing is told.</summary>
    private static Build Told(ImmutableArray<Trait> traits, string words)
    {
        var said = Plain(words);
        var told = traits.Select(t => new TraitValues(t.Id, [.. t.Values.Where(v => v.Says.Any(phrase => Says(said, phrase))).Select(v => v.Id)])).Zip(traits);
        return new([.. told.Where(t => t.First.Values.Length == 1 || (t.Second.Several && t.First.Values.Length > 1)).Select(t => t.First)]);
    }

    /// <summary>"No adapter", "without a lid": what is denied is not told.</summary>
    private static bool Says(string said, string phrase)
    {
        var plain = Plain(phrase);
        for (var at = said.IndexOf(plain, StringComparison.Ordinal); at >= 0; at = said.IndexOf(plain, at + 1, StringComparison.Ordinal))
        {
            if (!Denied.IsMatch(said[..at]))
                return true;
        }

        return false;
    }

    /// <summary>Words alone, each between blanks, so that a phrase is found only as whole words.</summary>
    private static string Plain(string words) => $" {string.Join(' ', Word.Matches(words.ToLowerInvariant()).Select(m => m.Value))} ";

    [GeneratedRegex(@"\b(?:no|not|without|lacks)(?: (?:a|an|the|any|its))?$")]
    private static partial Regex Denied { get; }

    [GeneratedRegex(@"[\p{L}\p{N}]+")]
    private static partial Regex Word { get; }
}
