using System.Globalization;
using Triage.Notes.Writing;
using Triage.Workshop.Readings;

namespace Triage.Workshop.Steps;

/// <summary>Meters and testers set up, changed, taken away. What is typed has to read back without a problem, or nothing is written.</summary>
public sealed class InstrumentEditing
{
    private const string Field = "instruments";

    private readonly LiveBench bench;

    internal InstrumentEditing(LiveBench bench) => this.bench = bench;

    /// <param name="version">State of the file that the form was made from.</param>
    /// <param name="was">Name it has now; null for a new one.</param>
    public Refusal? Keep(string version, string? was, TypedInstrument typed)
    {
        if (string.IsNullOrWhiteSpace(typed.Name))
            return WorkshopRefusals.NothingSaid("name of the instrument");
        for (var line = 0; line < typed.Ranges.Length; line++)
        {
            if (RangeLine.Read(typed.Ranges[line]) is null)
                return WorkshopRefusals.NotARange(line + 1, typed.Ranges[line]);
        }

        if (typed.Name != was && At(typed.Name) >= 0)
            return WorkshopRefusals.NameUsed(typed.Name);
        var written = InstrumentSettings.Written(typed);
        if (was is null)
            return bench.Setup.Change(version, text => text.Append([Field], written));
        return At(was) is var at && at >= 0 ? bench.Setup.Change(version, text => text.Set([Field, Place(at)], written)) : NoSuch(was);
    }

    public Refusal? Remove(string version, string name) =>
        At(name) is var at && at >= 0 ? bench.Setup.Change(version, text => text.Remove([Field, Place(at)])) : NoSuch(name);

    private int At(string name) => bench.Current.Settings.Instruments.ToList().FindIndex(i => i.Name == name);

    private static string Place(int at) => at.ToString(CultureInfo.InvariantCulture);

    private Refusal NoSuch(string name) => WorkshopRefusals.NoSuch("instrument", name, bench.Current.Settings.Instruments.Select(i => i.Name));
}
