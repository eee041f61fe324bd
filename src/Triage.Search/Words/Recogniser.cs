using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Search.Words;

/// <summary>Reads findings out of a complaint. Immutable; safe for several threads.</summary>
public sealed class Recogniser
{
    private const int LongestText = 20_000;

    private readonly ImmutableArray<Finding> findings;
    private readonly ComplaintClassifier? pastJobs;
    private readonly Vocabulary all;
    private readonly Lazy<Vocabulary> general;
    private readonly ImmutableDictionary<string, Lazy<Vocabulary>> byClass;

    private Recogniser(ImmutableArray<Finding> findings, ComplaintClassifier? pastJobs)
    {
        this.findings = findings;
        this.pastJobs = pastJobs;
        all = new Vocabulary(findings);
        general = new(() => new(findings.Where(f => f.Classes.IsEmpty)));
        byClass = findings.SelectMany(f => f.Classes).Distinct()
            .ToImmutableDictionary(c => c, c => new Lazy<Vocabulary>(() => new(findings.Where(f => IsFor(f, c)))));
    }

    /// <param name="pastJobs">Adds suggestions; null to go by phrasings alone.</param>
    public static Recogniser Build(IEnumerable<Finding> findings, ComplaintClassifier? pastJobs = null) => new([.. findings], pastJobs);

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
            Suggested = Suggestions(read, understood, deviceClass),
            Notice = read.Length < text.Length ? SearchTexts.ComplaintCut(read.Length, text.Length) : null,
        };
    }

    private Vocabulary VocabularyFor(string? deviceClass) =>
        deviceClass is null ? all
        : byClass.TryGetValue(deviceClass, out var own) ? own.Value
        : general.Value;

    private ImmutableArray<Suggestion> Suggestions(string text, Recognition understood, string? deviceClass)
    {
        if (pastJobs is null)
        {
            return [];
        }

        var known = findings.Where(f => deviceClass is null || IsFor(f, deviceClass)).Select(f => f.Id).ToHashSet();
        known.ExceptWith(understood.Findings.Select(f => f.Finding));
        return [.. pastJobs.Suggest(text).Where(s => known.Contains(s.Finding))];
    }

    private static bool IsFor(Finding finding, string deviceClass) => finding.Classes.IsEmpty || finding.Classes.Contains(deviceClass);
}
