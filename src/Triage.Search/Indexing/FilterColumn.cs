namespace Triage.Search.Indexing;

/// <summary>The values of one filter in a segment, as numbers.</summary>
/// <param name="starts">Where the values of a note begin; one more at the end.</param>
internal sealed class FilterColumn(int[] starts, int[] numbers)
{
    /// <summary>Numbers of a note's values.</summary>
    public ReadOnlySpan<int> Of(int doc) => numbers.AsSpan(starts[doc]..starts[doc + 1]);
}
