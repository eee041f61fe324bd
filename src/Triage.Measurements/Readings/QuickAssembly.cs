using System.Collections.Immutable;
using Triage.Measurements.Quantities;

namespace Triage.Measurements.Readings;

/// <summary>Puts the readings of a quick line together: each value with the place before it and the circumstances around it.</summary>
internal static class QuickAssembly
{
    /// <summary>Circumstances hold for the reading before them; those before the first reading hold for the first.</summary>
    public static ImmutableArray<Reading> Readings(IReadOnlyList<QuickPiece> pieces)
    {
        var readings = ImmutableArray.CreateBuilder<Reading>();
        var early = new List<QuickPiece>();
        QuickPiece? part = null;
        string? place = null;
        for (var at = 0; at < pieces.Count; at++)
        {
            var piece = pieces[at];
            var names = at > 0 && pieces[at - 1].Kind is QuickKind.Designator && piece.Kind is QuickKind.Part; // "C3 capacitor"
            switch (piece.Kind)
            {
                case QuickKind.Designator or QuickKind.Part when !names:
                    (part, place) = (piece, null);
                    break;
                case QuickKind.Terminal:
                    place = piece.Says;
                    break;
                case QuickKind.Reading:
                    var beside = new[] { at - 1, at + 1 }.Any(i => i >= 0 && i < pieces.Count && pieces[i].Says == QuickWords.SeriesResistance);
                    readings.Add(early.Aggregate(Started(part?.Says, place, piece.Value!, beside), Under));
                    early.Clear();
                    break;
                case QuickKind.Condition when readings.Count == 0:
                    early.Add(piece);
                    break;
                case QuickKind.Condition:
                    readings[^1] = Under(readings[^1], piece);
                    break;
            }
        }

        return readings.ToImmutable();
    }

    private static Reading Started(string? owner, string? place, MeasuredValue value, bool seriesResistance)
    {
        var junction = place is not null && QuickPlaces.IsJunction(place);
        var (from, to) = junction
            ? ($"{owner} {place![0]}".Trim(), $"{owner} {place[2]}".Trim())
            : (place is not null && QuickPlaces.InVolts(place) ? place : $"{owner} {place}".Trim(), null);
        return new Reading(from, to, Mode(value, junction, seriesResistance), value);
    }

    public static Reading Under(Reading reading, QuickPiece condition) => condition.Says switch
    {
        QuickWords.UnderLoad => reading with { Load = LoadState.Loaded },
        QuickWords.NoLoad => reading with { Load = LoadState.NoLoad },
        QuickWords.Reversed => reading with { LeadsReversed = true },
        QuickWords.OutOfCircuit => reading with { OneLegLifted = true },
        QuickWords.PowerOff when reading.Power is PowerState.Unknown => reading with { Power = PowerState.Off },
        QuickWords.Drained => reading with { Power = PowerState.OffDrained },
        _ => condition.Value?.Quantity is { Unit: Unit.Second } after ? reading with { AfterSeconds = after.Value } : reading,
    };

    private static ReadingMode Mode(MeasuredValue value, bool junction, bool seriesResistance) => value.Quantity?.Unit switch
    {
        _ when value.Kind is MeasuredKind.UnknownPart => ReadingMode.ComponentTester,
        Unit.Volt or null when junction => ReadingMode.DiodeDrop,
        Unit.Ohm when seriesResistance => ReadingMode.SeriesResistance,
        null => ReadingMode.Resistance,
        { } unit => ReadingModes.Usual(unit) ?? ReadingMode.ComponentTester,
    };
}
