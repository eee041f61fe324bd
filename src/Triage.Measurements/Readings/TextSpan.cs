namespace Triage.Measurements.Readings;

/// <summary>A stretch of a text: zero-based start and length in characters.</summary>
public readonly record struct TextSpan(int Start, int Length)
{
    public int End => Start + Length;

    public string Of(string text) => text.Substring(Start, Length);
}
