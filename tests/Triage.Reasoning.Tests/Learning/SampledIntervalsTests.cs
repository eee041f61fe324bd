using MathNet.Numerics.Distributions;
using Triage.Reasoning.Inference;
using Triage.Reasoning.Learning;
using Triage.Reasoning.Networks;
using Xunit;

namespace Triage.Reasoning.Tests.Learning;

public class SampledIntervalsTests
{
    [Fact]
    public void WithNothingSeen_IntervalIsThatOfThePrior()
    {
        Network network = new([Part("a", 0.1, 200)], []) { SomethingIsWrong = false };

        Interval interval = SampledIntervals.Of(network, Evidence.None, seed: 1, draws: 4000).AtStart["a"];

        // Beta(20, 180), 5 % and 95 % quantiles; the shortest interval lies a little lower
        Assert.Equal(Beta.InvCDF(20, 180, 0.05), interval.Lower, 0.01);
        Assert.Equal(Beta.InvCDF(20, 180, 0.95), interval.Upper, 0.01);
    }

    [Fact]
    public void ExactlyKnownNumbers_LeaveNoDoubt()
    {
        Interval interval = SampledIntervals.Of(new([Part("a", 0.1, double.PositiveInfinity), Part("b", 0.1, double.PositiveInfinity)], []), Evidence.None, seed: 1).AtStart["a"];

        Assert.Equal(0.1 / 0.19, interval.Lower, 1e-12);
        Assert.Equal(interval.Lower, interval.Upper, 1e-12);
    }

    [Fact]
    public void WhatAnActionCleared_IsNotThereAnyMore()
    {
        Network network = new([Part("a", 0.1, 20), Part("b", 0.1, 20)], []);
        Evidence fixedA = new() { Actions = [new("fix", [new(0, 1, Works: 1)], ActionOutcome.StillFaulty)] };

        SampledIntervals intervals = SampledIntervals.Of(network, fixedA, seed: 1);

        Assert.False(intervals.Remaining.ContainsKey("a"));
        Assert.True(intervals.AtStart["a"].Upper > 0);
        Assert.Equal(1, intervals.Remaining["b"].Lower, 1e-12);
    }

    static Root Part(string id, double prior, double weight) =>
        new(id, [new("good", []), new("failed", [id])], [1 - prior, prior]) { PriorWeight = [weight, weight] };
}
