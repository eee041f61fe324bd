namespace Triage.Search;

/// <summary>A range of characters.</summary>
/// <param name="Start">First character, from 0.</param>
/// <param name="Length">Characters.</param>
public readonly record struct TextSpan(int Start, int Length)
{
    public int End => Start + Length;

    public string Of(string text) => text.Substring(Start, Length);
}
