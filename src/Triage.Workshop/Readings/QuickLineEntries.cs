using System.Collections.Immutable;
using Triage.Measurements.Readings;
using Triage.Notes.Kinds;
using Triage.Workshop.Knowledge;
using QuickLine = Triage.Measurements.Readings.QuickLine;

namespace Triage.Workshop.Readings;

/// <summary>What a quick line says with certainty, as entries of their own beside the line as written.</summary>
internal sealed class QuickLineEntries(DeviceScope? scope, Notebook notes, DateTimeOffset now)
{
    public ImmutableArray<LogEntry> Of(QuickLine line) => [.. Readings(line), .. Swap(line)];

    /// <summary>Each reading with its place; none when a number in the line cannot be trusted, for then places may be wrong too.</summary>
    private IEnumerable<LogEntry> Readings(QuickLine line) =>
        line.Problems.IsEmpty ? line.Readings.Where(r => r.From.Length > 0).Select(Entry) : [];

    private Read Entry(Reading reading) => new(now, Words(reading))
    {
        From = reading.From,
        To = reading.To,
        Mode = ReadingModeWords.Of(reading.Mode),
        Value = reading.Value.ToString(),
        Power = Power(reading),
        Load = reading.Load switch
        {
            LoadState.Unknown => null,
            LoadState.NoLoad => "none",
            LoadState.Loaded => "loaded",
        },
    };

    /// <summary>The power state, and what else the fields of an entry have no place for.</summary>
    private static string? Power(Reading reading) => reading.Power switch
    {
        PowerState.Unknown => null,
        PowerState.OffDrained => "off, drained",
        PowerState.Off => "off",
        PowerState.Limited => "limited",
        PowerState.On => "full",
    };

    private static string Words(Reading reading)
    {
        string?[] circumstances =
        [
            reading.AfterSeconds is { } after ? FormattableString.Invariant($"after {after} s") : null,
            reading.LeadsReversed ? "leads reversed" : null,
            reading.OneLegLifted ? "one leg lifted" : null,
            reading.Load is LoadState.Loaded ? "under load" : null,
            reading.Mode is ReadingMode.SeriesResistance ? "esr" : null,
        ];
        return $"{reading.From}{(reading.To is { } to ? $" to {to}" : "")}: {reading.Value}{string.Concat(circumstances.OfType<string>().Select(c => ", " + c))}";
    }

    /// <summary>"swapped C7 470/25, no difference": one part that is on the parts list, one fix for it alone, one plain outcome or none.</summary>
    private IEnumerable<LogEntry> Swap(QuickLine line)
    {
        var (deeds, places, outcomes) = (line.Of(QuickKind.Action).ToList(), line.Of(QuickKind.Designator).ToList(), line.Of(QuickKind.Outcome).ToList());
        if (scope is not null && deeds is [{ Says: "swapped" }] && places is [var place] && outcomes.Count <= 1
            && new PartOfReading(scope, notes).Listed(place.Says) is { } part && FixOf(scope, part) is { } fix
            && Effect(outcomes.FirstOrDefault()?.Says) is { } effect)
        {
            yield return new Swapped(now, part.Designator!, fix, effect, null);
        }
    }

    private static Effect? Effect(string? outcome) => outcome switch
    {
        null => Notes.Kinds.Effect.NotSeen,
        "works" => Notes.Kinds.Effect.Works,
        "no difference" or "does not work" => Notes.Kinds.Effect.NoChange,
        _ => null,
    };

    /// <summary>The one fix that covers faults of this part and of no other; null when there is none or several.</summary>
    private static string? FixOf(DeviceScope scope, DevicePart part)
    {
        var mine = scope.Faults.Where(f => f.Part == part.Part && f.Role == part.Role && f.Role is not null).Select(f => f.Id).ToHashSet(StringComparer.Ordinal);
        var fixes = scope.Faults.SelectMany(f => f.Mends.Select(m => (m.Id, Fault: f.Id))).GroupBy(m => m.Id, m => m.Fault, StringComparer.Ordinal)
            .Where(g => g.All(mine.Contains)).Select(g => g.Key).Take(2).ToList();
        return fixes is [var only] ? only : null;
    }
}
