using Triage.Measurements;
using Triage.Measurements.Readings;
using Triage.Notes.Kinds;

namespace Triage.Workshop.Readings;

/// <summary>A log entry as a reading.</summary>
internal static class TypedReadings
{
    public static (Reading? Reading, MeasurementProblem? Problem) Typed(this Read entry) => new TypedReading
    {
        Text = entry.Text,
        From = entry.From,
        To = entry.To,
        Mode = entry.Mode,
        Value = entry.Value,
        Power = entry.Power,
        Load = entry.Load,
        Instrument = entry.Instrument,
    }.Read();
}
