namespace Triage.Measurements;

/// <summary>Something that could not be read or should not be trusted.</summary>
/// <param name="What">What is wrong, quoting the text.</param>
/// <param name="Instead">What to write or do instead.</param>
public sealed record MeasurementProblem(string What, string Instead)
{
    public override string ToString() => $"{What}: {Instead}";
}
