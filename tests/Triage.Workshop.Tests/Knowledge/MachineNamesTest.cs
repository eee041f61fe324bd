using Triage.Workshop.Knowledge;
using Xunit;

namespace Triage.Workshop.Tests.Knowledge;

/// <summary>Which machine an owner means, in the owner's words.</summary>
public sealed class MachineNamesTest(SharedDemo shared)
{
    private readonly DemoBench bench = shared.Bench;

    [Theory]
    [InlineData("the amplifier hums", "audio-amplifier")]
    [InlineData("adaptor dead, 0 V at the plug", "power-adapter")]
    [InlineData("my synth shows garbage", "electronic-keyboard")]
    [InlineData("the keyboard of my laptop types wrong letters", "portable-computer")]
    [InlineData("clock radio loses time", "clock-timer")]
    [InlineData("picture-tube television, no picture", "picture-tube-display")]
    public void A_complaint_names_its_machine(string complaint, string kind)
    {
        Assert.Equal(kind, MachineNames.Resolve("", complaint, bench.Live.Current.Notes).Class?.Id);
    }

    [Fact]
    public void A_name_used_for_two_kinds_is_asked_back_and_never_guessed()
    {
        var asked = bench.Live.Steps.Ask("", "the tv has a picture but no sound");

        Assert.Null(asked.Answer);
        Assert.Contains("Flat display, Picture-tube display", asked.Refused!.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_name_of_the_machine_is_not_listed_as_not_understood()
    {
        Assert.Empty(bench.Live.Steps.Ask("", "calculator: no sound").Recognition.NotUnderstood);
    }
}
