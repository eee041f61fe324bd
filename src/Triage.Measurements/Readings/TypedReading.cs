using Triage.Measurements.Quantities;

namespace Triage.Measurements.Readings;

/// <summary>A reading from the fields of a form or a note, each as typed; what a field leaves open is taken from the words beside it.</summary>
public sealed record TypedReading
{
    /// <summary>The whole in words: "C14, ohms, off: 12 R".</summary>
    public required string Text { get; init; }

    public string? From { get; init; }

    public string? To { get; init; }

    public string? Mode { get; init; }

    public string? Value { get; init; }

    public string? Power { get; init; }

    public string? Load { get; init; }

    public string? Instrument { get; init; }

    /// <summary>The reading, or why it cannot be read; exactly one of the two is null.</summary>
    public (Reading? Reading, MeasurementProblem? Problem) Read()
    {
        var said = QuickReading.Read(Text);
        var mode = Mode is null ? null : ReadingModeWords.Find(Mode);
        if (Mode is not null && mode is null)
        {
            return (null, MeasurementProblems.NoMode(Mode, ReadingModeWords.All));
        }

        if (Shown(said, mode, out var problem) is not { } value)
        {
            return (null, problem);
        }

        var same = said.Readings.FirstOrDefault(r => r.Value == value);
        var set = mode ?? same?.Mode ?? (value.Quantity is { } q ? ReadingModes.Usual(q.Unit) : ReadingMode.Resistance) ?? ReadingMode.ComponentTester;
        var reading = new Reading(From ?? same?.From ?? said.Says(QuickKind.Designator) ?? Text, To ?? same?.To, set, value)
        {
            Load = LoadOf(Load),
            Instrument = Instrument,
        };
        return (Circumstances(reading, said, same) is var under ? under with { Power = PowerOf(Power, under.Power) } : under, null);
    }

    private MeasuredValue? Shown(QuickLine said, ReadingMode? mode, out MeasurementProblem? problem)
    {
        problem = null;
        if (string.IsNullOrWhiteSpace(Value))
        {
            problem = MeasurementProblems.NothingShown(From ?? Text);
            return said.Readings.Length == 1 ? said.Readings[0].Value : null;
        }

        var read = ValueText.Read(Value, mode is { } m ? ReadingModes.UnitOf(m) : null);
        problem = read.Problem;
        return read.Value;
    }

    /// <summary>Words that tell of several values say of each its own, as far as that is plain; of one, everything in them holds.</summary>
    private Reading Circumstances(Reading reading, QuickLine said, Reading? same)
    {
        var values = said.Readings.Length + said.Of(QuickKind.Rating).Count(p => p.Rating?.Value?.Unit == reading.Value.Quantity?.Unit);
        var under = values <= 1 ? said.Of(QuickKind.Condition).Aggregate(reading, QuickAssembly.Under)
            : same is null ? reading
            : reading with { AfterSeconds = same.AfterSeconds, LeadsReversed = same.LeadsReversed, OneLegLifted = same.OneLegLifted, Power = same.Power };
        return QuickReading.Read((Power ?? "").Replace('-', ' ')).Of(QuickKind.Condition).Aggregate(under, QuickAssembly.Under);
    }

    private static PowerState PowerOf(string? words, PowerState said) =>
        words is null || said is PowerState.OffDrained ? said
        : Has(words, "off") || Has(words, "unplugged") || Has(words, "cold") ? PowerState.Off
        : Has(words, "limited") || Has(words, "lamp") ? PowerState.Limited
        : Has(words, "full") || Has(words, "on") ? PowerState.On
        : said;

    private static LoadState LoadOf(string? words) => words?.Trim().Replace('-', ' ') switch
    {
        null or "" or "unknown" => LoadState.Unknown,
        "none" or "no load" or "off load" or "unloaded" => LoadState.NoLoad,
        _ => LoadState.Loaded,
    };

    private static bool Has(string words, string word) =>
        words.Split([' ', ',', ';', '-'], StringSplitOptions.RemoveEmptyEntries).Contains(word, StringComparer.OrdinalIgnoreCase);
}
