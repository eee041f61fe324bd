using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Search.Words;
using Xunit;

namespace Triage.Search.Tests.Words;

/// <summary>The same words in another order say the opposite: which clause denies decides.</summary>
public class TwoSuppliesTests
{
    private static readonly Recogniser Reading = Recogniser.Build([Plain("only-on-adapter"), Plain("only-on-cells")]);

    [Theory]
    [InlineData("dead on the adapter, works on batteries", "only-on-cells=yes")]
    [InlineData("works on the adapter, dead on batteries", "only-on-adapter=yes")]
    [InlineData("it won't go on batteries, only from the mains", "only-on-adapter=yes")]
    [InlineData("With the adaptor it's fine, on batteries not a peep", "only-on-adapter=yes")]
    [InlineData("works on the plug not on batteries", "only-on-adapter=yes")]
    [InlineData("plays from cells, not from the mains", "only-on-cells=yes")]
    [InlineData("only works on batteries", "only-on-cells=yes")]
    [InlineData("goes with the mains lead and it goes with cells", "only-on-adapter=no only-on-cells=no")]
    [InlineData("nothing on the mains, nothing on batteries either", "only-on-adapter=no only-on-cells=no")]
    [InlineData("dead since he plugged in the wrong charger", "")]
    [InlineData("runs on the adapter without the batteries", "")]
    [InlineData("the battery lasts an hour", "")]
    public void What_runs_it_and_what_does_not(string complaint, string read) =>
        Assert.Equal(read, string.Join(' ', Reading.Recognise(complaint).Findings.OrderBy(f => f.Finding, StringComparer.Ordinal).Select(f => $"{f.Finding}={f.Value}")));

    private static Finding Plain(string id) => new(id, id)
    {
        Values = [new("no", "no", [], null), new("yes", "yes", [], null)],
    };
}
