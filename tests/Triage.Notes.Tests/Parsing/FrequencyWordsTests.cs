using Triage.Notes.Kinds;

namespace Triage.Notes.Tests.Parsing;

public sealed class FrequencyWordsTests
{
    /// <summary>Mosteller &amp; Youtz 1990 find people agree on this order, from memory.</summary>
    [Fact]
    public void WordsFallInTheOrderPeopleUseThemIn()
    {
        string[] order = ["always", "almost always", "usually", "often", "sometimes", "seldom", "rarely", "never"];

        var chances = order.Select(w => FrequencyWords.Find(w)!.Probability).ToList();

        Assert.Equal(chances.OrderDescending(), chances);
        Assert.Equal(order.Length, chances.Distinct().Count());
        Assert.All(chances, p => Assert.InRange(p, 0.001, 0.999));
    }

    [Fact]
    public void GradesCountAsTheDesignSays() =>
        Assert.Equal([1.0, 0.7, 0.4, 0.2, 0.1], Enum.GetValues<Grade>().Select(GradeWeights.Of));

    [Fact]
    public void WhatMustBeHandedOverSaysSo()
    {
        Assert.True(StandardCautions.Of(Hazard.PictureTube).HandOver);
        Assert.True(StandardCautions.Of(Hazard.MicrowaveHighVoltage).HandOver);
        Assert.All(Enum.GetValues<Hazard>(), h => Assert.NotEmpty(StandardCautions.Of(h).Say));
    }
}
