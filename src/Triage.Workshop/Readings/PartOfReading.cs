using Triage.Measurements.Parts;
using Triage.Measurements.Readings;
using Triage.Notes.Kinds;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Readings;

/// <summary>Finds the part that a reading was taken on: by designator, else by the words for its role or class.</summary>
internal sealed class PartOfReading(DeviceScope scope, Notebook notes)
{
    private static readonly char[] Between = [' ', ',', ';', ':', '(', ')', '-', '/', '.'];

    /// <param name="text">The reading in words, for what its ends do not say.</param>
    public FoundPart Find(Reading reading, string text)
    {
        var (from, to) = (Listed(reading.From), reading.To is null ? null : Listed(reading.To));
        if ((from ?? to) is not { } part)
            return Unlisted(reading.From) is { } unknown ? new(null, ReadingTexts.NotOnTheList(unknown, scope.Name)) : ByWords(reading.From, text);
        if (Elsewhere(reading, from, part))
            return new(null, ReadingTexts.BetweenParts(reading.From, reading.To!));
        return ReadingModes.FeedsThePart(reading.Mode) && ReadingPlaces.IsGround(reading.To)
            ? new(null, ReadingTexts.AgainstGround(part.Designator!))
            : Of(part.Part, part.Role, part);
    }

    /// <summary>The listed part that some words name by its designator.</summary>
    public DevicePart? Listed(string words)
    {
        var said = words.Split(Between, StringSplitOptions.RemoveEmptyEntries);
        return scope.Device?.Parts.Where(p => p.Designator is not null && said.Contains(p.Designator, StringComparer.OrdinalIgnoreCase))
            .MinBy(p => Array.FindIndex(said, w => w.Equals(p.Designator, StringComparison.OrdinalIgnoreCase)));
    }

    private static string? Unlisted(string words) => QuickReading.Read(words).Says(QuickKind.Designator);

    /// <summary>One end on another part: the reading is of whatever lies between.</summary>
    private bool Elsewhere(Reading reading, DevicePart? from, DevicePart part) =>
        reading.To is { } to
        && (from is null || (Listed(to)?.Designator ?? Unlisted(to)) is { } other && !other.Equals(part.Designator, StringComparison.OrdinalIgnoreCase));

    private FoundPart ByWords(string from, string text)
    {
        foreach (var words in new[] { from, text })
        {
            var named = scope.Roles.Where(r => Names(words, r.Name) || Names(words, r.Id.Replace('-', ' '))).Select(r => (Role: (string?)r.Id, Part: scope.PartIn(r.Id))).ToList();
            if (named.Count == 0)
                named = [.. ByClass(words)];
            if (named.Count == 1 && named[0].Part is { } part)
                return Of(part, named[0].Role, scope.Device?.Parts.FirstOrDefault(p => p.Role == named[0].Role && p.Part == part));
            if (named.Count > 1)
                return new(null, ReadingTexts.SeveralParts(words));
        }

        return new(null, ReadingTexts.NoPart(text, scope.Name));
    }

    private IEnumerable<(string? Role, string? Part)> ByClass(string words)
    {
        var classes = notes.Of<PartClass>().Where(c => c.Also.Append(c.Name).Append(c.Id.Replace('-', ' ')).Any(n => Names(words, n))).Select(c => c.Id).ToHashSet(StringComparer.Ordinal);
        return scope.Roles.Select(r => (Role: (string?)r.Id, Part: scope.PartIn(r.Id)))
            .Concat((scope.Device?.Parts ?? []).Select(p => (p.Role, Part: (string?)p.Part)))
            .Where(p => p.Part is not null && classes.Contains(p.Part))
            .Distinct();
    }

    private static bool Names(string words, string name) => Plain(words).Contains(Plain(name), StringComparison.Ordinal);

    private static string Plain(string words) => $" {string.Join(' ', words.ToLowerInvariant().Split(Between, StringSplitOptions.RemoveEmptyEntries))} ";

    private FoundPart Of(string partClass, string? role, DevicePart? listed)
    {
        if (notes.Find<PartClass>(partClass) is not { } known)
            return new(null, ReadingTexts.NoPartClass(partClass));
        var name = listed?.Designator ?? scope.Roles.FirstOrDefault(r => r.Id == role)?.Name ?? known.Name.ToLowerInvariant();
        return new(
            new(name, listed?.Designator, known, role, RatingText.Read(listed?.Rating ?? ""))
            {
                Alike = Math.Max(1, scope.Device?.Parts.Count(p => p.Role == role && p.Part == partClass) ?? 1),
            },
            null);
    }
}
