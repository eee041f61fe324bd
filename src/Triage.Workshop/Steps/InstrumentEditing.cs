using System.Globalization;
using Triage.Notes.Writing;
using Triage.Workshop.Knowledge;

namespace Triage.Workshop.Steps;

/// <summary>Meters and testers set up, changed, taken away. What is typed has to read back without a problem, or nothing is written.</summary>
public sealed class InstrumentEditing
{
    private const string Field = "instruments";

    private readonly SettingsEditing setup;

    internal InstrumentEditing(SettingsEditing setup) => this.setup = setup;

    /// <param name="version">State of the file that the form was made from; null when any will do.</param>
    /// <param name="was">Name it has now; null for a new one.</param>
    public Refusal? Keep(string? version, string? was, TypedInstrument typed)
    {
        if (string.IsNullOrWhiteSpace(typed.Name))
            return WorkshopRefusals.NothingSaid("name of the instrument");
        for (var line = 0; line < typed.Ranges.Length; line++)
        {
            if (RangeLine.Read(typed.Ranges[line]) is null)
                return WorkshopRefusals.NotARange(line + 1, typed.Ranges[line]);
        }

        var written = InstrumentSettings.Written(typed);
        return setup.Change(version, (now, text) =>
            typed.Name != was && At(now, typed.Name) >= 0 ? WorkshopRefusals.NameUsed(typed.Name)
            : was is null ? text.Append([Field], written)
            : At(now, was) is >= 0 and var at ? text.Set([Field, Place(at)], written)
            : NoSuch(now, was));
    }

    /// <param name="version">As for <see cref="Keep"/>.</param>
    public Refusal? Remove(string? version, string name) => setup.Change(version, (now, text) =>
        At(now, name) is >= 0 and var at ? text.Remove([Field, Place(at)]) : NoSuch(now, name));

    private static int At(BenchSettings now, string name) => now.Instruments.ToList().FindIndex(i => i.Name == name);

    private static string Place(int at) => at.ToString(CultureInfo.InvariantCulture);

    private static Refusal NoSuch(BenchSettings now, string name) => WorkshopRefusals.NoSuch("instrument", name, now.Instruments.Select(i => i.Name));
}
