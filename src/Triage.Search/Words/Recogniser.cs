using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Search.Words;

/// <summary>Reads findings out of a complaint. Immutable; safe for several threads.</summary>
public sealed class Recogniser
{
    private const int LongestText = 20_000;

    private readonly Vocabulary all;
    private readonly Lazy<Vocabulary> general;
    private readonly ImmutableDictionary<string, Lazy<Vocabulary>> byClass;

    private Recogniser(ImmutableArray<Finding> findings)
    {
        all = new Vocabulary(findings);
        general = new(() => new(findings.Where(f => f.Classes.IsEmpty)));
        byClass = findings.SelectMany(f => f.Classes).Distinct()
            .ToImmutableDictionary(c => c, c => new Lazy<Vocabulary>(() => new(findings.Where(f => IsFor(f, c)))));
    }

    public static Recogniser Build(IEnumerable<Finding> findings) => new([.. findings]);

    /// <summary>Never throws for what the text says. What is cut or not understood is in the answer.</summary>
    /// <param name="text">In the owner's words.</param>
    /// <param name="deviceClass">Leaves out findings of other classes; null for any.</param>
    public Recognition Recognise(string text, string? deviceClass = null)
    {
        var read = text.Length > LongestText ? text[..LongestText] : text;
        if (!read.Any(char.IsLetterOrDigit))
        {
            return new([], [], []) { Notice = SearchTexts.NoWords };
        }

        if (!read.Any(char.IsAsciiLetterOrDigit))
        {
            var whole = read.Trim();
            return new([], [new(whole, new(read.IndexOf(whole, StringComparison.Ordinal), whole.Length))], []) { Notice = SearchTexts.OtherScript };
        }

        var understood = new ComplaintReading(read, VocabularyFor(deviceClass)).Result();
        return understood with
        {
            Notice = read.Length < text.Length ? SearchTexts.ComplaintCut(read.Length, text.Length) : null,
        };
    }

    private Vocabulary VocabularyFor(string? deviceClass) =>
        deviceClass is null ? all
        : byClass.TryGetValue(deviceClass, out var own) ? own.Value
        : general.Value;

    private static bool IsFor(Finding finding, string deviceClass) => finding.Classes.IsEmpty || finding.Classes.Contains(deviceClass);
}
