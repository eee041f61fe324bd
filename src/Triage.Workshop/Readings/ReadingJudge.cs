using System.Collections.Immutable;
using Triage.Measurements.Instruments;
using Triage.Measurements.Parts;
using Triage.Measurements.Quantities;
using Triage.Measurements.Readings;
using Triage.Notes.Kinds;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Readings;

/// <summary>
/// What a reading says: part, expectation and instrument put together, then a likelihood for each state of the part.
/// Two kinds of question are asked of an entry: what does it say alone, and what together with the other looks at the same capacitor.
/// </summary>
/// <param name="log">The whole log: readings of a sister channel or a working unit say what to expect.</param>
internal sealed class ReadingJudge(DeviceScope scope, Notebook notes, BenchSettings settings, IEnumerable<LogEntry> log)
{
    private readonly PartOfReading parts = new(scope, notes);
    private readonly ImmutableArray<Read> references = [.. log.OfType<Read>().Where(r => SisterReading.Of(r) is not null)];

    /// <param name="stretch">All readings between the same two repairs, this one among them.</param>
    public ReadingVerdict Judge(Read entry, IReadOnlyList<Read> stretch)
    {
        var (read, problem) = entry.Typed();
        if (read is null)
            return Not(null, null, entry, ReadingTexts.NotTrusted(problem!));
        var reading = read.Mode is ReadingMode.ComponentTester && read.Value.Quantity is { } q ? read with { Mode = ReadingModes.Usual(q.Unit) ?? read.Mode } : read;
        if (reading.Problems() is [var first, ..])
            return Not(reading, null, entry, ReadingTexts.NotTrusted(first));
        if (Named(reading) is { } named && named.Cannot.Contains(reading.Mode))
            return Not(reading, null, entry, ReadingTexts.InstrumentCannot(named.Name, ReadingModeWords.Of(reading.Mode)));
        if (SisterReading.Of(entry) is not null)
            return Not(reading, null, entry, ReadingTexts.Expected);
        var found = parts.Find(reading, entry.Text);
        return found.Part is { } part ? Looks(reading, part, entry, stretch) ?? Alone(reading, part, entry) : Not(reading, null, entry, found.Why!);
    }

    private static ReadingVerdict Not(Reading? reading, MeasuredPart? part, Read entry, string why) =>
        new() { Reading = reading, Part = part?.Name, Measured = part, Words = $"{entry.Text}: not weighed, {why}", NotUsed = why };

    /// <summary>Null when it is no capacitor on an ohm range, or when looks are missing or tell nothing together.</summary>
    private ReadingVerdict? Looks(Reading reading, MeasuredPart part, Read entry, IReadOnlyList<Read> stretch)
    {
        if (LooksRow(reading, part) is not { } row)
            return null;
        var looks = stretch.Where(e => SisterReading.Of(e) is null).Select(e => (Entry: e, e.Typed().Reading))
            .Where(l => l.Reading is { } r && r.Mode == reading.Mode && r.OneLegLifted == reading.OneLegLifted && r.Problems().IsEmpty
                && parts.Find(r, l.Entry.Text).Part is { } other && (other.Name, other.Role) == (part.Name, part.Role))
            .Select(l => l.Reading!).ToList();
        var together = CapacitorLooks.Judge(looks, part.Rating.In(Unit.Farad), MeterFor(reading));
        if (together is null or { Behaviour: CapacitorBehaviour.CannotTell })
            return null;
        if (!CapacitorLooks.Tells(together.Behaviour))
            return Not(reading, part, entry, $"{together.Why}: {together.Next}");
        ImmutableArray<StateVerdict> states = [.. StatesOf(part).Select(s => new StateVerdict(s.Id, s.Name, null, null,
            CapacitorLooks.Likelihood(together.Behaviour, State(row, s.Id).Behaviour ?? row.Good.Behaviour!.Value, reading.OneLegLifted)))];
        var verdict = new ReadingVerdict { Reading = reading, Part = part.Name, Measured = part, Row = row, ThreeLooks = true, States = Scaled(states), Words = "" };
        return verdict with { Words = ReadingWords.Of(verdict, together.Why, together.Next) };
    }

    private ReadingVerdict Alone(Reading reading, MeasuredPart part, Read entry)
    {
        var rows = part.Class.Readings.Where(r => r.Good.Behaviour is null && SameMode(r.Mode, reading.Mode) && InPlaceFits(r, reading)).ToList();
        var terminal = ReadingPlaces.Terminal(reading, part);
        var row = rows.FirstOrDefault(r => r.At.Contains(terminal, StringComparer.OrdinalIgnoreCase)) ?? rows.FirstOrDefault(r => r.At.IsEmpty);
        if (row is null)
        {
            return Not(reading, part, entry, rows.Count > 0 ? ReadingTexts.WhichTerminal(part.Name, rows.SelectMany(r => r.At).Distinct())
                : LooksRow(reading, part) is not null ? ReadingTexts.TwoMoreLooks
                : ReadingTexts.NothingSaidOf(part.Class.Name.ToLowerInvariant(), ReadingModeWords.Of(reading.Mode)));
        }

        return row.PowerOn && reading.Power is PowerState.Off or PowerState.OffDrained
            ? Not(reading, part, entry, ReadingTexts.PowerWasOff(part.Name))
            : Weighed(reading with { Mode = row.Mode }, part, row, entry);
    }

    private ReadingVerdict Weighed(Reading reading, MeasuredPart part, PartReading row, Read entry)
    {
        if (StateRanges.Of(row, part, Expected(reading, part)) is not { } ranges)
            return Not(reading, part, entry, ReadingTexts.NoRating(part.Name));
        var meter = MeterFor(reading);
        if (part.Rating.SourceOhms is { } source && reading.Mode is ReadingMode.DcVolts or ReadingMode.AcVolts)
            ranges = ranges.Loaded(source, meter.InputOhms);
        var (good, modes) = (ranges.Good, ranges.Modes);
        var likelihood = ReadingLikelihood.Of(reading, good, modes, meter, goodOverRange: row.Good.OverRange);
        var named = modes.Select((m, at) => (m, Likelihood: likelihood[at + 1])).ToDictionary(m => m.m.State, StringComparer.Ordinal);
        ImmutableArray<StateVerdict> states = [.. StatesOf(part).Select(s => named.TryGetValue(s.Id, out var mode)
            ? new StateVerdict(s.Id, s.Name, mode.m.Low, mode.m.High, mode.Likelihood)
            : new StateVerdict(s.Id, s.Name, good.Low, good.High, likelihood[0]))];
        var verdict = new ReadingVerdict { Reading = reading, Part = part.Name, Measured = part, Row = row, Good = good, States = states, Words = "" };
        var next = LooksRow(reading, part) is not null ? ReadingTexts.TwoMoreLooks
            : meter.BurdenVolts is { } burden && reading.Mode is ReadingMode.DcCurrent or ReadingMode.AcCurrent ? ReadingTexts.Burden(meter.Name, burden)
            : null;
        return verdict with { Words = ReadingWords.Of(verdict, ReadingWords.Against(reading, good, meter), next) };
    }

    /// <summary>The sister channel or a working unit says better what to expect than the rating.</summary>
    private ExpectedRange? Expected(Reading reading, MeasuredPart part) =>
        part.Designator is null ? null
        : references.Where(r => Mentions(r, part.Designator)).Select(r => (By: SisterReading.Of(r)!.Value, r.Typed().Reading))
            .Where(r => r.Reading is { } other && SameMode(reading.Mode, other.Mode) && other.Problems().IsEmpty)
            .Select(r => SisterReading.Expects(r.Reading!, r.By)).LastOrDefault(e => e is not null);

    private static bool Mentions(Read entry, string designator) =>
        new[] { entry.From, entry.Text, entry.Note }.OfType<string>().SelectMany(w => w.Split([' ', ',', ':', '.']))
            .Contains(designator, StringComparer.OrdinalIgnoreCase);

    private static PartReading? LooksRow(Reading reading, MeasuredPart part) =>
        reading.Mode is ReadingMode.Resistance ? part.Class.Readings.FirstOrDefault(r => r.Good.Behaviour is not null && InPlaceFits(r, reading)) : null;

    private static bool InPlaceFits(PartReading row, Reading reading) => row.InPlace is null || row.InPlace != reading.OneLegLifted;

    private static StateReading State(PartReading row, string mode) => row.Modes.GetValueOrDefault(mode) ?? row.Good;

    private static bool SameMode(ReadingMode one, ReadingMode other) => Plain(one) == Plain(other);

    /// <summary>A beeper is an ohm range that sounds.</summary>
    private static ReadingMode Plain(ReadingMode mode) => mode is ReadingMode.Continuity ? ReadingMode.Resistance : mode;

    private static IEnumerable<(string Id, string Name)> StatesOf(MeasuredPart part) =>
        part.Class.Modes.DistinctBy(m => m.Id).Select(m => (m.Id, m.Name)).Prepend(("good", "good"));

    private static ImmutableArray<StateVerdict> Scaled(ImmutableArray<StateVerdict> states) =>
        states.Max(s => s.Likelihood) is var most ? [.. states.Select(s => s with { Likelihood = s.Likelihood / most })] : states;

    /// <summary>The instrument by its name, else the bench's first that has the mode, else an ordinary one.</summary>
    private Instrument MeterFor(Reading reading) =>
        Named(reading)
        ?? settings.Instruments.FirstOrDefault(i => i.Largest(reading.Mode) is not null)
        ?? Instrument.Ordinary;

    private Instrument? Named(Reading reading) =>
        settings.Instruments.FirstOrDefault(i => reading.Instrument?.Contains(i.Name, StringComparison.OrdinalIgnoreCase) == true);
}
