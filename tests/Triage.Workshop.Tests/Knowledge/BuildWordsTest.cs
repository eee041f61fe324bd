using Triage.Notes.Kinds;
using Triage.Workshop.Knowledge;
using Xunit;

namespace Triage.Workshop.Tests.Knowledge;

/// <summary>What a machine's looks tell of its build.</summary>
public sealed class BuildWordsTest
{
    private static readonly DeviceClass Radio = new("radio-set", "Radio set")
    {
        Builds =
        [
            new("supply", "What feeds it")
            {
                Several = true,
                Values = [new("cells", "cells", null) { Says = ["cells", "batteries"] }, new("adapter", "adapter", null) { Says = ["adapter"] }, new("mains", "mains inside", null) { Says = ["mains lead"] }],
            },
        ],
    };

    [Theory]
    [InlineData("four cells and a mains lead", "cells mains")]
    [InlineData("mains lead, no batteries", "mains")]
    [InlineData("runs without an adapter, on batteries", "cells")]
    [InlineData("batteries, not the adapter", "cells")]
    [InlineData("no adapter", "")]
    public void What_is_denied_is_not_told(string looks, string told) =>
        Assert.Equal(told, string.Join(' ', BuildWords.Told(Radio, looks, "").Traits.SelectMany(t => t.Values)));
}
