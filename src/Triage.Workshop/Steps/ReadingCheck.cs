using Triage.Measurements.Quantities;
using Triage.Notes.Kinds;

namespace Triage.Workshop.Steps;

/// <summary>A reading must be one: a value with its unit, over range, or what a component tester says.</summary>
internal static class ReadingCheck
{
    public static Refusal? Refuses(Read reading)
    {
        if (string.IsNullOrWhiteSpace(reading.Value))
            return string.IsNullOrWhiteSpace(reading.Text) ? WorkshopRefusals.NothingSaid("reading") : null;
        var read = ValueText.Read(reading.Value, null);
        return read.Problem is { } problem ? new(RefusalKind.NotUnderstood, $"{problem.What}:", problem.Instead) : null;
    }
}
