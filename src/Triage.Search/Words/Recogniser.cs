using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Search.Meaning;

namespace Triage.Search.Words;

/// <summary>Reads findings out of a complaint. Immutable; safe for several threads.</summary>
public sealed class Recogniser
{
    private const int LongestText = 20_000;

    /// <summary>"I think it hums": four in five are so (common practice, no source).</summary>
    private const double SureOfAHedge = 0.8;

    /// <summary>Of a machine of no known class only that is heard which many kinds of machine can show.</summary>
    private const int OfMany = 5;

    private readonly Lazy<Reader> all;
    private readonly Lazy<Reader> general;
    private readonly ImmutableDictionary<string, Lazy<Reader>> byClass;

    private Recogniser(ImmutableArray<Finding> findings, SentenceVectors? meaning, ImmutableDictionary<string, DeviceClass> machines)
    {
        all = new(() => new(findings.Where(f => f.Classes.IsEmpty || f.Classes.Length >= OfMany), MachineNames.Any, meaning));
        general = new(() => new(findings.Where(f => f.Classes.IsEmpty), MachineNames.Any, meaning));
        byClass = findings.SelectMany(f => f.Classes).Distinct()
            .ToImmutableDictionary(c => c, c => new Lazy<Reader>(() => new(findings.Where(f => IsFor(f, c)), machines.TryGetValue(c, out var machine) ? MachineNames.Of(machine) : MachineNames.Any, meaning)));
    }

    /// <param name="meaning">Understands wording that no phrasing has; null to go by words alone.</param>
    /// <param name="machines">Their names are how people speak of the whole machine; those of classes not given are not known.</param>
    public static Recogniser Build(IEnumerable<Finding> findings, SentenceVectors? meaning = null, IEnumerable<DeviceClass>? machines = null) =>
        new([.. findings], meaning, (machines ?? []).ToImmutableDictionary(m => m.Id));

    /// <summary>Does ahead what the first complaint about each class of device would wait for.</summary>
    public void GetReady()
    {
        foreach (var reader in byClass.Values)
            _ = reader.Value.Read("it does nothing");
    }

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

        return ReaderFor(deviceClass).Read(read) with
        {
            Notice = read.Length < text.Length ? SearchTexts.ComplaintCut(read.Length, text.Length) : null,
        };
    }

    private Reader ReaderFor(string? deviceClass) =>
        deviceClass is null ? all.Value
        : byClass.TryGetValue(deviceClass, out var own) ? own.Value
        : general.Value;

    private static bool IsFor(Finding finding, string deviceClass) => finding.Classes.IsEmpty || finding.Classes.Contains(deviceClass);

    /// <summary>Reads in the words of some findings.</summary>
    private sealed class Reader
    {
        private readonly Vocabulary vocabulary;
        private readonly MeaningReader? meanings;

        public Reader(IEnumerable<Finding> findings, MachineNames machine, SentenceVectors? meaning)
        {
            vocabulary = new(findings, machine);
            meanings = meaning is null ? null : new(new(findings, meaning), vocabulary.IsNormal);
        }

        public Recognition Read(string text)
        {
            (text, var unsaid) = NotStated.In(text);
            var byWords = new ComplaintReading(text, vocabulary).Result();
            byWords = byWords with { NotUnderstood = [.. byWords.NotUnderstood.Concat(unsaid).OrderBy(p => p.Span.Start)] };
            var read = TwoSupplies.Settled(text, meanings?.Read(text, byWords) ?? byWords, vocabulary);
            return read with { Findings = [.. read.Findings.Select(f => f.Hedged ? f with { Sure = f.Sure * SureOfAHedge } : f)] };
        }
    }
}
