using System.Collections.Immutable;
using Triage.Measurements.Quantities;

namespace Triage.Measurements.Readings;

/// <summary>Puts the readings of a quick line together: each value with the place before it and the circumstances around it.</summary>
internal static class QuickAssembly
{
    public static ImmutableArray<Reading> Readings(List<QuickPiece> pieces)
    {
        var readings = ImmutableArray.CreateBuilder<Reading>();
        for (var at = 0; at < pieces.Count; at++)
        {
            if (pieces[at] is { Kind: QuickKind.Reading, Value: { } value })
            {
                var first = pieces.FindIndex(p => p.Kind is QuickKind.Reading) == at;
                var next = pieces.FindIndex(at + 1, p => p.Kind is QuickKind.Reading);
                var around = pieces.Take(next < 0 ? pieces.Count : next).Skip(first ? 0 : at).Where(p => p.Kind is QuickKind.Condition);
                var esr = new[] { at - 1, at + 1 }.Any(i => i >= 0 && i < pieces.Count && pieces[i].Says == QuickWords.SeriesResistance);
                readings.Add(Reading(pieces.Take(at).ToList(), value, [.. around], esr));
            }
        }

        return readings.ToImmutable();
    }

    private static Reading Reading(List<QuickPiece> before, MeasuredValue value, ImmutableArray<QuickPiece> around, bool esr)
    {
        var part = before.FindLastIndex(p => p.Kind is QuickKind.Designator or QuickKind.Part);
        var terminal = before.FindLastIndex(p => p.Kind is QuickKind.Terminal);
        var place = terminal > part ? before[terminal].Says : null;
        var owner = part >= 0 && place?.EndsWith("rail", StringComparison.Ordinal) is not true ? before[part].Says : null;
        var (from, to) = Ends(owner, place);
        ImmutableArray<string> said = [.. around.Select(p => p.Says)];
        return new Reading(from, to, Mode(value, place, esr), value)
        {
            Power = said.Contains(QuickWords.Drained) ? PowerState.OffDrained : said.Contains(QuickWords.PowerOff) ? PowerState.Off : PowerState.Unknown,
            Load = said.Contains(QuickWords.UnderLoad) ? LoadState.Loaded : said.Contains(QuickWords.NoLoad) ? LoadState.NoLoad : LoadState.Unknown,
            AfterSeconds = around.Select(p => p.Value?.Quantity?.Value).FirstOrDefault(v => v is not null),
            LeadsReversed = said.Contains(QuickWords.Reversed),
            OneLegLifted = said.Contains(QuickWords.OutOfCircuit),
        };
    }

    private static (string From, string? To) Ends(string? owner, string? place)
    {
        if (place is not null && QuickPlaces.IsJunction(place))
        {
            return ($"{owner} {place[0]}".Trim(), $"{owner} {place[2]}".Trim());
        }

        return (string.Join(' ', new[] { owner, place }.OfType<string>()), null);
    }

    private static ReadingMode Mode(MeasuredValue value, string? place, bool esr)
    {
        if (value.Kind is MeasuredKind.UnknownPart)
        {
            return ReadingMode.ComponentTester;
        }

        var junction = place is not null && QuickPlaces.IsJunction(place);
        return value.Quantity?.Unit switch
        {
            Unit.Volt or null when junction => ReadingMode.DiodeDrop,
            Unit.Ohm when esr => ReadingMode.SeriesResistance,
            null => ReadingMode.Resistance,
            { } unit => ReadingModes.Usual(unit) ?? ReadingMode.ComponentTester,
        };
    }
}
