using Triage.Notes.Kinds;

namespace Triage.Notes.Tests;

/// <summary>Machines of one class that are built differently.</summary>
public sealed class BuildTests
{
    private static readonly Trait Supply = new("supply", "What feeds it") { Several = true, Values = [Value("mains", 0.5), Value("adapter", 0.4), Value("cells", 0.3)] };

    private static readonly Trait Display = new("display", "Display") { Values = [Value("lamps", 0.6), Value("panel", 0.6)] };

    [Fact]
    public void MachineThatIsFedInTwoWaysHasTheFaultsOfBoth()
    {
        var portable = Told("supply", "adapter", "cells");

        Assert.True(Only("supply", "cells").Fits(portable));
        Assert.True(Only("supply", "mains", "adapter").Fits(portable));
        Assert.False(Only("supply", "mains").Fits(portable));
    }

    [Fact]
    public void EveryListedTraitHasToFit() =>
        Assert.False(new BuildCondition([new("supply", ["cells"]), new("display", ["lamps"])]).Fits(Told("supply", "cells").With(Told("display", "panel"))));

    [Fact]
    public void WhatNobodyToldMayBe() => Assert.True(Only("display", "lamps").Fits(Told("supply", "cells")));

    [Fact]
    public void UntoldTraitCountsAsOftenAsMachinesHaveIt()
    {
        Assert.Equal(0.5, Only("display", "lamps").ChanceOn(Build.Untold, [Supply, Display]), 12);
        Assert.Equal(1 - 0.6 * 0.7, Only("supply", "adapter", "cells").ChanceOn(Build.Untold, [Supply, Display]), 12);
        Assert.Equal(0.3 * 0.5, new BuildCondition([new("supply", ["cells"]), new("display", ["lamps"])]).ChanceOn(Build.Untold, [Supply, Display]), 12);
    }

    [Fact]
    public void ToldTraitIsNoLongerAMatterOfChance()
    {
        Assert.Equal(1, Only("display", "lamps").ChanceOn(Told("display", "lamps"), [Supply, Display]));
        Assert.Equal(0, Only("display", "lamps").ChanceOn(Told("display", "panel"), [Supply, Display]));
    }

    [Fact]
    public void ValueThatNoMachineOfTheClassHasIsNeverThere() => Assert.Equal(0, Only("display", "tube").ChanceOn(Build.Untold, [Supply, Display]));

    [Fact]
    public void WhatIsToldOfOneMachineCountsBeforeItsModel()
    {
        var build = Told("supply", "adapter").With(Told("supply", "mains"));

        Assert.Equal(["mains"], build.Of("supply")!.Value);
    }

    private static TraitValue Value(string id, double share) => new(id, id, new Chance(share, 3));

    private static Build Told(string trait, params string[] values) => new([new(trait, [.. values])]);

    private static BuildCondition Only(string trait, params string[] values) => new([new(trait, [.. values])]);
}
